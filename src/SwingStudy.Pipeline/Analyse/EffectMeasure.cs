using SwingStudy.Domain.Variables;
using SwingStudy.Statistics.Change;
using SwingStudy.Statistics.EffectSizes;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Pipeline.Analyse;

/// <summary>The effect measures of one player's change.</summary>
internal static class EffectMeasure
{
    /// <summary>Change of the mean, with session and swing noise.</summary>
    public const string Difference = "difference";

    /// <summary>Change in percent.</summary>
    public const string PercentChange = "percent-change";

    /// <summary>Standardized difference.</summary>
    public const string HedgesG = "hedges-g";

    /// <summary>Logarithm of the ratio of means.</summary>
    public const string LogResponseRatio = "log-response-ratio";

    /// <summary>Share of the change with the cue that a later phase keeps or carries over.</summary>
    public const string ShareKept = "share-kept";

    /// <summary>Those of every contrast, in the order in which they are written.</summary>
    public static IReadOnlyList<string> All { get; } = [Difference, PercentChange, HedgesG, LogResponseRatio];

    /// <summary>UCUM unit of an estimate.</summary>
    public static string? UnitOf(string measure, OutcomeSetting outcome) => measure switch
    {
        Difference => outcome.Unit,
        PercentChange or ShareKept => "%",
        _ => "1",
    };

    /// <summary>Estimates one measure. Percent and logarithm compare session means with each other, by t; the standardized difference has the
    /// scatter of swings below it and takes swings as independent, which the method says.</summary>
    public static Estimate Of(string measure, OutcomeSetting outcome, ChangeData data, HonestChange change, EffectSettings settings)
    {
        if (measure == Difference)
            return change.Estimate;
        if (measure == HedgesG)
        {
            double[] before = [.. data.Before.SelectMany(session => session)], after = [.. data.After.SelectMany(session => session)];
            var effect = settings.Standardizer == "baseline"
                ? GlassDelta.Corrected(IndependentContrast.Of(before, after), settings.Confidence)
                : Statistics.EffectSizes.HedgesG.Pooled(IndependentContrast.Of(before, after), settings.Confidence);
            return effect with { Method = effect.Method + "; swings as independent" };
        }

        if (outcome.Scale != MeasurementScale.Ratio)
            return Estimate.NotDefined(measure + SessionRatio.Basis, "a ratio needs a scale with a true zero");
        return measure == PercentChange ? SessionRatio.Percent(data, settings.Confidence) : SessionRatio.Logarithm(data, settings.Confidence);
    }
}
