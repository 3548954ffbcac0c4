namespace SwingStudy.Statistics.Description;

/// <summary>The check that opens every statistic.</summary>
internal static class Finite
{
    /// <summary>Throws when a value is NaN or infinite, naming its place.</summary>
    /// <exception cref="ArgumentException">A value is not finite.</exception>
    public static void Require(ReadOnlySpan<double> values, string parameter)
    {
        for (var i = 0; i < values.Length; i++)
        {
            if (!double.IsFinite(values[i]))
                throw new ArgumentException($"Every value must be a finite number; place {i + 1} holds {values[i]}.", parameter);
        }
    }

    /// <summary>Throws when <paramref name="confidence"/> is not a share between 0 and 1.</summary>
    /// <exception cref="ArgumentException">The confidence is out of range.</exception>
    public static void RequireConfidence(double confidence)
    {
        if (!(confidence > 0 && confidence < 1))
            throw new ArgumentException($"Confidence is a share between 0 and 1, such as 0.95; got {confidence}.", nameof(confidence));
    }
}
