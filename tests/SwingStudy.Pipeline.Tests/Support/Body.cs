using SwingStudy.Domain.Studies;
using SwingStudy.Domain.Tables;
using SwingStudy.Pipeline.Running;
using SwingStudy.Storage.Registry;

namespace SwingStudy.Pipeline.Tests.Support;

/// <summary>Runs the body of one stage on rows in memory.</summary>
internal static class Body
{
    public static StudySetup Setup { get; } = Some.Setup(new StudyFolder("/nowhere"));

    /// <summary>The rows of one output table.</summary>
    public static RowSet Run(
        string stage, string output, IEnumerable<RowSet> inputs, SessionRecord? session = null, IReadOnlyList<Decision>? decisions = null, StudySetup? setup = null,
        string participant = "P01")
    {
        var bound = Stages.All.Single(candidate => candidate.Declaration.Name == stage).Bind(setup ?? Setup);
        var given = inputs.ToDictionary(rows => rows.Table.Name);
        var rows = bound.Inputs.ToDictionary(input => input.Table.Name, input => Shaped(input, given.GetValueOrDefault(input.Table.Name)));
        var unit = bound.Declaration.Unit == UnitOfWork.Day ? Day(session is null ? [] : [session]) : new WorkUnit(session?.Id ?? participant, participant, session, []);
        return Run(bound, output, rows, unit, decisions);
    }

    /// <summary>The rows of all output tables of a stage that works session by session, by table.</summary>
    public static IReadOnlyDictionary<string, RowSet> RunAll(string stage, IEnumerable<RowSet> inputs, SessionRecord session, StudySetup? setup = null)
    {
        var bound = Stages.All.Single(candidate => candidate.Declaration.Name == stage).Bind(setup ?? Setup);
        var given = inputs.ToDictionary(rows => rows.Table.Name);
        var rows = bound.Inputs.ToDictionary(input => input.Table.Name, input => Shaped(input, given.GetValueOrDefault(input.Table.Name)));
        var unit = new WorkUnit(session.Id, session.Participant.ToString(), session, []);
        var found = bound.Run(new StageInput(bound.Declaration, unit, rows, bound.Outputs, [])).ToDictionary(set => set.Table.Name);
        return bound.Outputs.ToDictionary(output => output.Key, output => found.GetValueOrDefault(output.Key) ?? RowSet.Empty(output.Value));
    }

    /// <summary>The rows of one output table of a stage that works day by day.</summary>
    public static RowSet RunDay(
        string stage, string output, IEnumerable<RowSet> inputs, IReadOnlyList<SessionRecord> sessions, IReadOnlyList<Decision>? decisions = null, StudySetup? setup = null)
    {
        var bound = Stages.All.Single(candidate => candidate.Declaration.Name == stage).Bind(setup ?? Setup);
        var given = inputs.ToDictionary(rows => rows.Table.Name);
        return Run(bound, output, bound.Inputs.ToDictionary(input => input.Table.Name, input => Shaped(input, given.GetValueOrDefault(input.Table.Name))), Day(sessions), decisions);
    }

    /// <summary>The unit of one day of sessions.</summary>
    private static WorkUnit Day(IReadOnlyList<SessionRecord> sessions)
    {
        var zone = NodaTime.DateTimeZoneProviders.Tzdb[Setup.Declaration.Zone];
        var units = sessions.GroupBy(session => session.Participant.ToString()).SelectMany(own => SessionTimes.Units(own.Key, own, zone));
        return DayUnits.Of(units, zone).First();
    }

    private static RowSet Run(BoundStage bound, string output, Dictionary<string, RowSet> rows, WorkUnit unit, IReadOnlyList<Decision>? decisions)
    {
        return bound.Run(new StageInput(bound.Declaration, unit, rows, bound.Outputs, decisions ?? [])).FirstOrDefault(set => set.Table.Name == output)
            ?? RowSet.Empty(bound.Outputs[output]);
    }

    /// <summary>The same rows in another order.</summary>
    public static RowSet Shuffled(this RowSet rows, int seed)
    {
        int[] order = [.. Enumerable.Range(0, rows.Count).OrderBy(i => (i * 7919 + seed * 104_729) % 1009).ThenBy(i => i * seed)];
        return rows.Select(order);
    }

    /// <summary>Every cell as text, row by row.</summary>
    public static string Text(this RowSet rows) => string.Join('\n', Enumerable.Range(0, rows.Count).Select(row => string.Join('|', rows.Columns.Select(column => column switch
    {
        TextColumn texts => texts.Values[row] ?? "-",
        NumberColumn numbers => numbers.Values[row].ToString("R", System.Globalization.CultureInfo.InvariantCulture),
        IntegerColumn integers => integers.Values[row]?.ToString(System.Globalization.CultureInfo.InvariantCulture) ?? "-",
        BooleanColumn booleans => booleans.Values[row]?.ToString() ?? "-",
        InstantColumn instants => instants.UnixMillis[row].ToString(System.Globalization.CultureInfo.InvariantCulture),
        NumberListColumn lists => lists.Values[row] is { } list ? string.Join(' ', list.Select(value => value.ToString("R", System.Globalization.CultureInfo.InvariantCulture))) : "-",
        _ => throw new InvalidOperationException($"No text for {column.Kind}."),
    }))));

    private static RowSet Shaped(BoundInput input, RowSet? rows) => rows is null
        ? RowSet.Empty(input.Shape)
        : new RowSet(input.Shape, [.. input.Shape.Columns.Select(column => rows[column.Name])]);
}
