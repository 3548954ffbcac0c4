using SwingStudy.Statistics.Distributions;

namespace SwingStudy.Statistics.Results;

/// <summary>The usual intervals around an estimate.</summary>
internal static class Limits
{
    /// <summary>Limits of δ·<paramref name="scale"/> where δ is the noncentrality behind the observed <paramref name="t"/>.</summary>
    /// <remarks>Source: Cumming and Finch (2001), Educational and Psychological Measurement 61:532–574.</remarks>
    public static Interval Noncentral(double t, double df, double scale, double confidence)
    {
        var tail = (1 - confidence) / 2;
        return new Interval(
            NoncentralT.NcpFromCdf(1 - tail, t, df) * scale, NoncentralT.NcpFromCdf(tail, t, df) * scale, confidence);
    }

    /// <summary>estimate ∓ z·se.</summary>
    public static Interval Normal(double estimate, double standardError, double confidence)
    {
        var half = Distributions.Normal.Critical(confidence) * standardError;
        return new Interval(estimate - half, estimate + half, confidence);
    }

    /// <summary>estimate ∓ t·se.</summary>
    public static Interval StudentT(double estimate, double standardError, double df, double confidence)
    {
        var half = Distributions.StudentT.Critical(confidence, df) * standardError;
        return new Interval(estimate - half, estimate + half, confidence);
    }
}
