using SwingStudy.Domain.Studies;
using SwingStudy.Domain.Tables;
using SwingStudy.Pipeline.Link;
using SwingStudy.Pipeline.Running;
using SwingStudy.Statistics.Reliability;

namespace SwingStudy.Pipeline.Analyse;

/// <summary>Compares sources that deliver the same variable for the same swings.</summary>
/// <remarks>
/// Values are as read, before screening: misreads are part of how two devices disagree. With several pairs a player, limits of agreement take
/// account of them (true value varying from pair to pair) and have no interval of their own here; with one player's pairs alone, pairs count as
/// independent.
/// </remarks>
internal sealed class AgreementStage : Stage<AgreementSettings>
{
    public override StageDeclaration Declaration { get; } = new()
    {
        Name = "agreement",
        Title = "Agreement",
        Summary = "Compares devices that deliver the same variable for the same swings, by bias and limits of agreement.",
        Unit = UnitOfWork.Study,
        Inputs = [new("captures", Slice.WithValues), new("links", Slice.WholeTable), new("curve_measures", Slice.WholeTable)],
        Outputs = ["agreement"],
        CodeVersion = "2",
    };

    protected override AgreementSettings SettingsOf(StudySetup setup) => AgreementSettings.Of(setup);

    protected override IReadOnlyList<string> ColumnsOf(string table, AgreementSettings settings) => table switch
    {
        "links" => ["capture_id", "swing_id", "participant", "method"],
        "curve_measures" => ["swing_id", "participant", "variable", "source", "value"],
        _ => ["capture_id", "source", .. settings.Variables.Select(variable => variable.Key)],
    };

    protected override IReadOnlyList<RowSet> Run(AgreementSettings settings, StageInput input)
    {
        var rows = new RowSetBuilder(input.Output("agreement"));
        var (captures, links, computed) = (input.Rows("captures"), input.Rows("links"), input.Rows("curve_measures"));
        if (settings.Variables.Count == 0)
            return [];
        var linked = BySource(captures, links);
        foreach (var (variable, unit) in settings.Variables)
        {
            var bySource = Readings(variable, captures, linked, computed);
            for (var a = 0; a < settings.Sources.Count; a++)
            {
                for (var b = a + 1; b < settings.Sources.Count; b++)
                    Add(rows, variable, unit, settings, (a, b), Pairs(bySource, settings.Sources[a], settings.Sources[b]));
            }
        }

        return [rows.Build()];
    }

    /// <summary>For each source, the row of each linked swing.</summary>
    private static Dictionary<string, SortedDictionary<string, (int Row, string Participant)>> BySource(RowSet captures, RowSet links)
    {
        var (ids, sources) = (captures.Texts("capture_id"), captures.Texts("source"));
        var rowOf = Enumerable.Range(0, captures.Count).ToDictionary(row => ids[row]!, StringComparer.Ordinal);
        var (linked, swings, participants, methods) = (links.Texts("capture_id"), links.Texts("swing_id"), links.Texts("participant"), links.Texts("method"));
        var bySource = new Dictionary<string, SortedDictionary<string, (int, string)>>(StringComparer.Ordinal);
        for (var i = 0; i < links.Count; i++)
        {
            if (swings[i] is not { } swing || methods[i] == LinkMethods.Window || !rowOf.TryGetValue(linked[i]!, out var row))
                continue;
            if (!bySource.TryGetValue(sources[row]!, out var own))
                bySource[sources[row]!] = own = new SortedDictionary<string, (int, string)>(StringComparer.Ordinal);
            own.TryAdd(swing, (row, participants[i] ?? ""));
        }

        return bySource;
    }

    /// <summary>For each source, the value of a variable at each swing: as read, or as computed from its curves.</summary>
    private static Dictionary<string, SortedDictionary<string, (double Value, string Participant)>> Readings(
        string variable, RowSet captures, Dictionary<string, SortedDictionary<string, (int Row, string Participant)>> linked, RowSet computed)
    {
        var values = captures.Numbers(variable);
        var readings = linked.ToDictionary(
            source => source.Key,
            source => new SortedDictionary<string, (double, string)>(
                source.Value.Where(swing => !double.IsNaN(values[swing.Value.Row])).ToDictionary(swing => swing.Key, swing => (values[swing.Value.Row], swing.Value.Participant)),
                StringComparer.Ordinal),
            StringComparer.Ordinal);
        var (swings, participants, names, sources, numbers) =
            (computed.Texts("swing_id"), computed.Texts("participant"), computed.Texts("variable"), computed.Texts("source"), computed.Numbers("value"));
        for (var i = 0; i < computed.Count; i++)
        {
            if (names[i] != variable || sources[i] is not { } source || double.IsNaN(numbers[i]))
                continue;
            if (!readings.TryGetValue(source, out var own))
                readings[source] = own = new SortedDictionary<string, (double, string)>(StringComparer.Ordinal);
            own.TryAdd(swings[i]!, (numbers[i], participants[i] ?? ""));
        }

        return readings;
    }

    private static List<(double A, double B, string Participant)> Pairs(
        Dictionary<string, SortedDictionary<string, (double Value, string Participant)>> readings, string sourceA, string sourceB)
    {
        var pairs = new List<(double, double, string)>();
        if (!readings.TryGetValue(sourceA, out var first) || !readings.TryGetValue(sourceB, out var second))
            return pairs;
        foreach (var (swing, a) in first)
        {
            if (second.TryGetValue(swing, out var b))
                pairs.Add((a.Value, b.Value, a.Participant));
        }

        return pairs;
    }

    private static void Add(
        RowSetBuilder rows, string variable, string? unit, AgreementSettings settings, (int A, int B) sources, List<(double A, double B, string Participant)> pairs)
    {
        double[] first = [.. pairs.Select(pair => pair.A)], second = [.. pairs.Select(pair => pair.B)];
        if (BlandAltman.Of(first, second, settings.Confidence) is not { } simple)
            return;
        List<string> participants = [.. pairs.Select(pair => pair.Participant).Distinct().Order(StringComparer.Ordinal)];
        var repeated = RepeatedBlandAltman.Of(first, second, [.. pairs.Select(pair => participants.IndexOf(pair.Participant))]);
        var limits = repeated?.LimitsVaryingTrue();
        rows.Add(
            ("outcome", variable),
            ("source_a", settings.Sources[sources.A]),
            ("source_b", settings.Sources[sources.B]),
            ("n", simple.Count),
            ("bias", simple.Bias.Value),
            ("bias_ci_low", repeated is null ? simple.Bias.Interval?.Low : null),
            ("bias_ci_high", repeated is null ? simple.Bias.Interval?.High : null),
            ("loa_low", limits?.Low ?? simple.Lower.Value),
            ("loa_low_ci_low", repeated is null ? simple.Lower.Interval?.Low : null),
            ("loa_low_ci_high", repeated is null ? simple.Lower.Interval?.High : null),
            ("loa_high", limits?.High ?? simple.Upper.Value),
            ("loa_high_ci_low", repeated is null ? simple.Upper.Interval?.Low : null),
            ("loa_high_ci_high", repeated is null ? simple.Upper.Interval?.High : null),
            ("unit", unit),
            ("method", repeated is null ? "bland-altman; pairs as independent" : "bland-altman-repeated; true value varying"));
    }
}
