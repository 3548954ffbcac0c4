using SwingStudy.Domain.Studies;
using SwingStudy.Domain.Tables;
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
        var readings = new SourceReadings(captures, links, computed);
        foreach (var (variable, unit) in settings.Variables)
        {
            var bySource = readings.Of(variable);
            for (var a = 0; a < settings.Sources.Count; a++)
            {
                for (var b = a + 1; b < settings.Sources.Count; b++)
                {
                    if (bySource.TryGetValue(settings.Sources[a], out var first) && bySource.TryGetValue(settings.Sources[b], out var second))
                        Add(rows, variable, unit, settings, (a, b), Pairs(first, second, readings.Participants));
                }
            }
        }

        return [rows.Build()];
    }

    private static List<(double A, double B, string Participant)> Pairs(double[] first, double[] second, string[] participants)
    {
        var pairs = new List<(double, double, string)>();
        for (var i = 0; i < first.Length; i++)
        {
            if (!double.IsNaN(first[i]) && !double.IsNaN(second[i]))
                pairs.Add((first[i], second[i], participants[i]));
        }

        return pairs;
    }

    private static void Add(
        RowSetBuilder rows, string variable, string? unit, AgreementSettings settings, (int A, int B) sources, List<(double A, double B, string Participant)> pairs)
    {
        double[] first = [.. pairs.Select(pair => pair.A)], second = [.. pairs.Select(pair => pair.B)];
        if (BlandAltman.Of(first, second, settings.Confidence) is not { } simple)
            return;
        var players = pairs.Select(pair => pair.Participant).Distinct().Order(StringComparer.Ordinal).Index().ToDictionary(pair => pair.Item, pair => pair.Index, StringComparer.Ordinal);
        var repeated = RepeatedBlandAltman.Of(first, second, [.. pairs.Select(pair => players[pair.Participant])]);
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
