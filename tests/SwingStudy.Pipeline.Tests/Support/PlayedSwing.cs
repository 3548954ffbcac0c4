using NodaTime;
using SwingStudy.Domain.Tables;

namespace SwingStudy.Pipeline.Tests.Support;

/// <summary>One row of swings or measures of a test.</summary>
internal sealed record PlayedSwing(string Session, string? Phase, int Sequence)
{
    public string Participant { get; init; } = "P01";

    public string? Club { get; init; } = "iron";

    public string? Ball { get; init; }

    public bool IsPractice { get; init; }

    public bool Included { get; init; } = true;

    public Dictionary<string, object?> Values { get; init; } = [];

    public string Id => $"{Session}-{Sequence:00}";

    /// <summary>Swings of one session with values of one variable.</summary>
    public static IEnumerable<PlayedSwing> Of(string session, string phase, string variable, params double[] values) =>
        values.Select((value, i) => new PlayedSwing(session, phase, i + 1) { Participant = session[..3], Values = new() { [variable] = value } });

    public static RowSet Measures(IEnumerable<PlayedSwing> swings) => Rows(StudyTables.Measures(Some.Dictionary), swings, isScreened: false);

    public static RowSet Swings(IEnumerable<PlayedSwing> swings, Domain.Variables.VariableDictionary? dictionary = null) =>
        Rows(StudyTables.Swings(dictionary ?? Some.Dictionary), swings, isScreened: true);

    private static RowSet Rows(TableDefinition table, IEnumerable<PlayedSwing> swings, bool isScreened)
    {
        var rows = new RowSetBuilder(table);
        foreach (var swing in swings)
        {
            var day = int.Parse(swing.Session.Split('-')[1], System.Globalization.CultureInfo.InvariantCulture) % 1000;
            rows.Add([
                ("swing_id", swing.Id), ("participant", swing.Participant), ("session", swing.Session), ("phase", swing.Phase), ("sequence", swing.Sequence),
                ("struck_at", Some.Morning + Duration.FromDays(day) + Duration.FromMinutes(swing.Sequence)), ("club", swing.Club), ("ball", swing.Ball), ("is_practice", swing.IsPractice),
                .. isScreened ? [("included", (object?)swing.Included)] : Array.Empty<(string, object?)>(), .. swing.Values.Select(value => (value.Key, value.Value))]);
        }

        return rows.Build();
    }
}
