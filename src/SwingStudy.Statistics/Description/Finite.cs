namespace SwingStudy.Statistics.Description;

/// <summary>The check that opens every statistic.</summary>
internal static class Finite
{
    /// <summary>The largest size of a value. No measurement comes near it, and fourth powers of it stay within the range of numbers.</summary>
    public const double Largest = 1e75;

    /// <summary>Throws when a value is NaN, infinite or beyond <see cref="Largest"/>, naming its place.</summary>
    /// <exception cref="ArgumentException">A value is not finite or too large.</exception>
    public static void Require(ReadOnlySpan<double> values, string parameter)
    {
        for (var i = 0; i < values.Length; i++)
        {
            if (!(Math.Abs(values[i]) <= Largest))
                throw new ArgumentException($"Every value must be a number of at most {Largest} in size; place {i + 1} holds {values[i]}.", parameter);
        }
    }

    /// <summary>
    /// Throws when a value that was computed from others is NaN or infinite. It may be larger than any measurement, so <see cref="Largest"/> does
    /// not bind it.
    /// </summary>
    /// <exception cref="ArgumentException">A value is not finite.</exception>
    public static void RequireComputed(ReadOnlySpan<double> values, string parameter)
    {
        foreach (var value in values)
        {
            if (!double.IsFinite(value))
                throw new ArgumentException($"Every value must be a finite number; got {value}.", parameter);
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
