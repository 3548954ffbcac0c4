using System.Globalization;
using SwingStudy.Domain.Tables;
using SwingStudy.Statistics.Group;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Pipeline.Analyse.Group;

/// <summary>Brings the players' effects together: random effects, each player with the error of the own estimate.</summary>
/// <remarks>
/// τ² by restricted maximum likelihood, error and interval of the mean after Knapp and Hartung, prediction interval with the same t. The standard deviation
/// of individual responses is τ, the spread of changes with the sampling error taken out; its interval is the root of that of τ² by Q profiles. Fewer than
/// two players, or none with an error, give no estimate. p values are adjusted within a measure over the planned comparisons of outcomes of the same role:
/// primary outcomes decide the question and are one family, secondary ones the next.
/// </remarks>
internal static class GroupSynthesis
{
    private static readonly string[] Measures = [.. EffectMeasure.All];

    /// <summary>All estimates over players, but for counts of verdicts.</summary>
    public static IReadOnlyList<GroupEffect> Of(
        RowSet effects, IReadOnlyList<OutcomeSetting> outcomes, IReadOnlyList<ContrastSetting> contrasts, string multiplicity, double confidence)
    {
        var rows = ByComparison(effects);
        var found = new List<GroupEffect>();
        foreach (var outcome in outcomes.Where(outcome => outcome.IsNumeric))
        {
            foreach (var contrast in contrasts)
            {
                foreach (var measure in Measures)
                {
                    if (rows.TryGetValue((outcome.Name, contrast.Name, measure), out var own))
                        found.AddRange(Together(outcome, contrast, measure, own, confidence));
                }
            }
        }

        return Adjusted(found, outcomes, multiplicity);
    }

    private static IEnumerable<GroupEffect> Together(OutcomeSetting outcome, ContrastSetting contrast, string measure, List<PlayerEffect> own, double confidence)
    {
        var usable = own.Where(effect => double.IsFinite(effect.Value) && effect.StandardError > 0).ToList();
        var effect = new GroupEffect
        {
            Outcome = outcome.Name,
            Contrast = contrast.Name,
            Measure = measure,
            Estimate = Estimate.NotDefined("meta-reml-knapp-hartung", $"needs at least 2 players with an estimate and its error, got {usable.Count.ToString(CultureInfo.InvariantCulture)}"),
            Players = usable.Count,
            Unit = EffectMeasure.UnitOf(measure, outcome),
            Planned = own.Exists(row => row.IsPlanned),
        };
        var variances = usable.Select(row => row.StandardError * row.StandardError).ToArray();
        var analysis = Array.TrueForAll(variances, variance => variance > 1e-150)
            ? MetaAnalysis.Of(usable.Select(row => row.Value).ToArray(), variances, HeterogeneityEstimator.Reml, confidence)
            : null;
        if (analysis is null)
        {
            yield return effect;
            yield break;
        }

        yield return effect with
        {
            Estimate = analysis.KnappHartung,
            TauSquared = analysis.TauSquared.Value,
            ISquared = 100 * analysis.ISquared,
            Prediction = analysis.PredictionKnappHartung,
        };
        if (measure == EffectMeasure.Difference)
            yield return effect with { Measure = GroupEffect.IndividualResponse, Estimate = Root(analysis.TauSquared) };
    }

    private static Estimate Root(Estimate variance) => Estimate.Of(
        variance.Method.Replace("tau-squared", "tau", StringComparison.Ordinal),
        Math.Sqrt(variance.Value!.Value),
        interval: variance.Interval is { } i ? new Interval(Math.Sqrt(i.Low), Math.Sqrt(i.High), i.Level) : null);

    private static GroupEffect[] Adjusted(List<GroupEffect> found, IReadOnlyList<OutcomeSetting> outcomes, string multiplicity)
    {
        var roles = outcomes.GroupBy(outcome => outcome.Name, StringComparer.Ordinal).ToDictionary(group => group.Key, group => group.First().Role, StringComparer.Ordinal);
        var families = found.Index().Where(pair => pair.Item is { Planned: true, Estimate.P: not null } && Measures.Contains(pair.Item.Measure))
            .GroupBy(pair => (pair.Item.Measure, roles[pair.Item.Outcome]));
        var all = found.ToArray();
        foreach (var family in families.Select(family => family.ToList()))
        {
            var adjusted = AdjustedP.Of(multiplicity, [.. family.Select(pair => pair.Item.Estimate.P)]);
            for (var i = 0; i < family.Count; i++)
            {
                var (index, effect) = family[i];
                var count = string.Create(CultureInfo.InvariantCulture, $"{effect.Estimate.Method}; p adjusted: {multiplicity} over {family.Count}");
                all[index] = effect with { AdjustedP = adjusted[i], Estimate = effect.Estimate with { Method = count } };
            }
        }

        return all;
    }

    private static Dictionary<(string, string, string), List<PlayerEffect>> ByComparison(RowSet effects)
    {
        var (participants, outcomes, contrasts, measures) = (effects.Texts("participant"), effects.Texts("outcome"), effects.Texts("contrast"), effects.Texts("measure"));
        var (estimates, errors, planned) = (effects.Numbers("estimate"), effects.Numbers("se"), effects.Booleans("planned"));
        return Enumerable.Range(0, effects.Count).OrderBy(i => participants[i], StringComparer.Ordinal)
            .GroupBy(i => (outcomes[i]!, contrasts[i]!, measures[i]!))
            .ToDictionary(group => group.Key, group => group.Select(i => new PlayerEffect(estimates[i], errors[i], planned[i] == true)).ToList());
    }

    private sealed record PlayerEffect(double Value, double StandardError, bool IsPlanned);
}
