using System.Globalization;
using System.Text.RegularExpressions;
using NodaTime;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Studies;
using SwingStudy.Domain.Tables;
using SwingStudy.Storage.Registry;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Pipeline.Audit;

/// <summary>Goes from a value of a table back to the rows of originals it came from.</summary>
/// <param name="setup">The study's declarations.</param>
/// <param name="registry">Its registry.</param>
public sealed partial class ValueTrace(StudySetup setup, StudyRegistry registry)
{
    private readonly TableStore _tables = new(setup.Folder);
    private readonly OriginalRows _originals = new(setup, registry);
    private readonly Dictionary<string, ILookup<string, (RowSet Rows, int Row)>> _captures = new(StringComparer.Ordinal);

    /// <summary>A capture, or one variable of it.</summary>
    public Outcome<TraceNode> Capture(string captureId, string? variable)
    {
        var table = StudyTables.Captures(setup.Dictionary);
        foreach (var rows in Read(table))
        {
            var row = Array.IndexOf(rows.Texts("capture_id"), captureId);
            if (row >= 0)
                return variable is null || rows.Table.Columns.Any(column => column.Name == variable) ? CaptureNode(rows, row, variable) : NoColumn(table, variable);
        }

        return Missing("capture", captureId, "captures");
    }

    /// <summary>A swing, or one variable of it, through all captures that are linked to it.</summary>
    public Outcome<TraceNode> Swing(string swingId, string? variable)
    {
        var table = StudyTables.Swings(setup.Dictionary);
        foreach (var rows in Read(table))
        {
            var row = Array.IndexOf(rows.Texts("swing_id"), swingId);
            if (row >= 0)
                return variable is null || rows.Table.Columns.Any(column => column.Name == variable) ? SwingNode(rows, row, variable) : NoColumn(table, variable);
        }

        return Missing("swing", swingId, "swings");
    }

    /// <summary>An effect of one player, through every counted swing of the two phases.</summary>
    public Outcome<TraceNode> Effect(string participant, string outcome, string contrastName, string measure)
    {
        var key = $"{participant}/{outcome}/{contrastName}/{measure}";
        var contrast = setup.Protocol.Contrasts.FirstOrDefault(known => known.Name == contrastName);
        foreach (var rows in Read(StudyTables.Effects))
        {
            for (var row = 0; row < rows.Count; row++)
            {
                if (contrast is null || rows.Texts("participant")[row] != participant || rows.Texts("outcome")[row] != outcome
                    || rows.Texts("contrast")[row] != contrastName || rows.Texts("measure")[row] != measure)
                    continue;
                return new TraceNode("effects", key, "estimate", Value(rows, "estimate", row), rows.Texts("method")[row],
                    [.. SwingsOf(participant, outcome, [contrast.From, contrast.To])], null);
            }
        }

        return Missing("effect", key, "effects");
    }

    private IEnumerable<TraceNode> SwingsOf(string participant, string outcome, string[] phases)
    {
        foreach (var rows in Read(StudyTables.Swings(setup.Dictionary), participant))
        {
            for (var row = 0; row < rows.Count; row++)
            {
                if (rows.Texts("participant")[row] == participant && phases.Contains(rows.Texts("phase")[row]) && rows.Booleans("included")[row] == true
                    && !rows[outcome].IsMissing(row))
                    yield return SwingNode(rows, row, outcome);
            }
        }
    }

    private TraceNode SwingNode(RowSet swings, int row, string? variable)
    {
        var swing = swings.Texts("swing_id")[row]!;
        var captures = CapturesBySwing(swings.Texts("participant")[row]!)[swing].ToList();
        var holding = variable is null || !setup.Dictionary.TryGet(variable, out _)
            ? captures
            : captures.Where(capture => !capture.Rows[variable].IsMissing(capture.Row)).ToList();
        if (holding.Count > 0)
            return new TraceNode("swings", swing, variable, variable is null ? null : Value(swings, variable, row), null, [.. holding.Select(capture => CaptureNode(capture.Rows, capture.Row, variable))], null);
        var inputs = variable is null ? [] : Inputs(variable);
        var from = inputs.SelectMany(input => captures.Where(capture => !capture.Rows[input].IsMissing(capture.Row)).Select(capture => CaptureNode(capture.Rows, capture.Row, input)));
        var note = variable is not null && setup.Dictionary.TryGet(variable, out var derived) && derived.Formula is { } formula ? $"derived: {formula}" : "from the session's entry in the registry, or nothing was read";
        return new TraceNode("swings", swing, variable, variable is null ? null : Value(swings, variable, row), note, [.. from], null);
    }

    private List<string> Inputs(string variable) => setup.Dictionary.TryGet(variable, out var definition) && definition.Formula is { } formula
        ? [.. Word().Matches(formula).Select(match => match.Value).Where(word => word != variable && setup.Dictionary.TryGet(word, out _)).Distinct()]
        : [];

    /// <summary>The captures of each swing of one player, read once a player.</summary>
    private ILookup<string, (RowSet Rows, int Row)> CapturesBySwing(string participant)
    {
        if (_captures.TryGetValue(participant, out var known))
            return known;
        var swingOf = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var rows in Read(StudyTables.Links, participant))
        {
            var (captures, swings) = (rows.Texts("capture_id"), rows.Texts("swing_id"));
            for (var row = 0; row < rows.Count; row++)
            {
                if (swings[row] is { } swing)
                    swingOf[captures[row]!] = swing;
            }
        }

        var found = new List<(string Swing, RowSet Rows, int Row)>();
        foreach (var rows in Read(StudyTables.Captures(setup.Dictionary), participant))
        {
            var captures = rows.Texts("capture_id");
            for (var row = 0; row < rows.Count; row++)
            {
                if (swingOf.TryGetValue(captures[row]!, out var swing))
                    found.Add((swing, rows, row));
            }
        }

        return _captures[participant] = found.ToLookup(capture => capture.Swing, capture => (capture.Rows, capture.Row), StringComparer.Ordinal);
    }

    private TraceNode CaptureNode(RowSet rows, int row, string? variable)
    {
        var origin = _originals.Find(new Sha256(rows.Texts("original_sha256")[row]!), checked((int)rows.Integers("original_row")[row]!.Value), variable);
        var replaced = rows.Texts("revision_of")[row] is { } earlier ? $"replaces {earlier}" : null;
        return new TraceNode("captures", rows.Texts("capture_id")[row]!, variable, variable is null ? null : Value(rows, variable, row), replaced, [], origin);
    }

    private IEnumerable<RowSet> Read(TableDefinition definition, string? participant = null)
    {
        var table = _tables.Table(definition);
        return table.CurrentVersion < 0 ? [] : table.Read(partition: participant);
    }

    private static string? Value(RowSet rows, string column, int row) => rows[column].IsMissing(row) ? null : rows[column] switch
    {
        TextColumn texts => texts.Values[row],
        NumberColumn numbers => numbers.Values[row].ToString("R", CultureInfo.InvariantCulture),
        IntegerColumn integers => integers.Values[row]?.ToString(CultureInfo.InvariantCulture),
        BooleanColumn booleans => booleans.Values[row] == true ? "true" : "false",
        InstantColumn instants => Instant.FromUnixTimeMilliseconds(instants.UnixMillis[row]).ToString(),
        NumberListColumn lists => string.Create(CultureInfo.InvariantCulture, $"{lists.Values[row]!.Length} samples"),
        var other => throw new ArgumentOutOfRangeException(nameof(column), other.Kind, "Unknown kind of column."),
    };

    private static Problem Missing(string what, string key, string table) => new($"{what}-unknown", new Place(table), $"no {what} '{key}'", $"a {what} of the study",
        $"'swingstudy query \"SELECT * FROM {table} LIMIT 20\"' shows some.");

    private static Problem NoColumn(TableDefinition table, string column) => new("column-unknown", new Place(table.Name), $"no column '{column}'", "a column of the table",
        $"'swingstudy query \"DESCRIBE {table.Name}\"' lists them.");

    [GeneratedRegex("[a-z][a-z0-9_]+")]
    private static partial Regex Word();
}
