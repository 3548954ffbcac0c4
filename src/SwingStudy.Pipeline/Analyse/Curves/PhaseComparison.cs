using SwingStudy.Domain.Tables;
using SwingStudy.Statistics.Chance;
using SwingStudy.Statistics.Curves;

namespace SwingStudy.Pipeline.Analyse.Curves;

/// <summary>Compares whole curves of one channel between two phases.</summary>
/// <remarks>
/// Sessions change places where there are enough of them for a p at the protocol's level. With fewer, swings do: that test takes the scatter
/// between sessions for part of the change and rejects too often when nothing changed; its rows say so, and no verdict rests on them.
/// </remarks>
internal sealed class PhaseComparison
{
    /// <summary>The whole curve.</summary>
    public const string LargestT = "largest-t";

    /// <summary>A span beyond the threshold.</summary>
    public const string SpanT = "span-t";

    /// <summary>A run of neighbouring points.</summary>
    public const string SpanMass = "span-mass";

    /// <summary>Higher after than before.</summary>
    public const string Higher = "higher";

    /// <summary>Lower after than before.</summary>
    public const string Lower = "lower";

    private readonly RowSetBuilder _rows;
    private readonly CurveAxis? _axis;
    private readonly (string, object?)[] _common;
    private readonly string? _unusable;
    private readonly double[][] _from = [];
    private readonly double[][] _to = [];
    private readonly CurveSettings _settings;

    private PhaseComparison(RowSetBuilder rows, string participant, string channel, ContrastSetting contrast, ChannelCurves curves, CurveSettings settings)
    {
        (_rows, _axis, _settings) = (rows, curves.Axis, settings);
        var (from, to) = (curves.Sessions(contrast.From), curves.Sessions(contrast.To));
        var alpha = 1 - settings.Confidence;
        var permuted = Exchange.SmallestP(from.Count, to.Count) <= alpha + 1e-12 ? Exchange.Sessions : Exchange.Swings;
        if (permuted == Exchange.Sessions)
            (_from, _to) = ([.. from.Select(MeanCurves.Of)], [.. to.Select(MeanCurves.Of)]);
        else
            (_from, _to) = ([.. from.SelectMany(session => session)], [.. to.SelectMany(session => session)]);
        _unusable = _from.Length == 0 || _to.Length == 0 ? "no curve of a swing that counts in " + (_from.Length == 0 ? contrast.From : contrast.To) : null;
        _common =
        [
            ("participant", participant), ("channel", channel), ("contrast", contrast.Name), ("permuted", _unusable is null ? permuted : null),
            ("n_from", from.Sum(session => session.Count)), ("n_to", to.Sum(session => session.Count)), ("sessions_from", from.Count), ("sessions_to", to.Count),
        ];
    }

    /// <summary>Adds the row of the whole curve, and one for each span.</summary>
    public static void Add(
        RowSetBuilder rows, string participant, string channel, ContrastSetting contrast, ChannelCurves curves, CurveSettings settings, Xoshiro256 chance)
    {
        var comparison = new PhaseComparison(rows, participant, channel, contrast, curves, settings);
        if (comparison._unusable is { } reason)
            comparison.Row(LargestT, CurveTest.TwoSampleMethod, ("undefined", reason));
        else
            comparison.Compare(chance);
    }

    private void Compare(Xoshiro256 chance)
    {
        var alpha = 1 - _settings.Confidence;
        var test = CurveTest.TwoSample(_to, _from, alpha, chance.Split("largest-t"), _settings.Resamples);
        if (test.Undefined is { } reason)
        {
            Row(LargestT, test.Method, ("undefined", reason));
            return;
        }

        var signed = test.T.Where(t => t is not null).MaxBy(t => Math.Abs(t!.Value));
        Row(LargestT, test.Method, [.. Size(signed!.Value), ("p", test.P), ("threshold", Finite(test.Threshold)), ("compared", test.Compared)]);
        foreach (var span in test.Clusters)
        {
            Row(SpanT, test.Method, [.. Span(span.From, span.To), .. Size(span.PeakT), ("p", span.P), ("threshold", Finite(test.Threshold)),
                ("compared", test.Compared)]);
        }

        var runs = ClusterMassTest.TwoSample(_to, _from, alpha, chance.Split("span-mass"), _settings.Resamples);
        foreach (var run in runs.Clusters)
        {
            Row(SpanMass, runs.Method, [.. Span(run.From, run.To), .. Size(run.Mass), ("p", run.P), ("threshold", runs.FormingT),
                ("compared", runs.Compared)]);
        }
    }

    private (string, object?)[] Span(int from, int to) => _axis!.Name == CurveAxis.SwingPhases
        ? [("from_pct", _axis.PlaceOf(from)), ("to_pct", _axis.PlaceOf(to))]
        : [("from_ms", _axis.PlaceOf(from)), ("to_ms", _axis.PlaceOf(to))];

    private void Row(string measure, string method, params (string, object?)[] more) => _rows.Add([.. _common, ("measure", measure), ("method", method), .. more]);

    /// <summary>Tables hold no infinity.</summary>
    private static double? Finite(double? value) => value is { } number && double.IsFinite(number) ? number : null;

    private static (string, object?)[] Size(double signed) =>
    [
        ("statistic", Finite(Math.Abs(signed))),
        ("direction", signed > 0 ? Higher : signed < 0 ? Lower : null),
        ("undefined", double.IsInfinity(signed) ? "infinite: the phases differ without any scatter" : null),
    ];
}
