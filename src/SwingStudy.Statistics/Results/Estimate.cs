namespace SwingStudy.Statistics.Results;

/// <summary>One estimated quantity with whatever the method gives beside it, or the reason why the data do not support it.</summary>
/// <remarks>
/// A statistic that the data cannot support is an undefined <see cref="Estimate"/> with its reason; only a caller's mistake throws.
/// No member ever holds NaN: what a method does not give is <see langword="null"/>.
/// </remarks>
public sealed record Estimate
{
    /// <summary>The exact name of the estimator or variant, the same word as in the catalogue and in the tables' <c>method</c> column.</summary>
    public required string Method { get; init; }

    /// <summary>The estimate; null when undefined.</summary>
    public double? Value { get; init; }

    /// <summary>Standard error of <see cref="Value"/>, in its unit.</summary>
    public double? StandardError { get; init; }

    /// <summary>Interval of <see cref="Value"/>, in its unit.</summary>
    public Interval? Interval { get; init; }

    /// <summary>Two-sided p value against the catalogue's null value, unless the method says otherwise.</summary>
    public double? P { get; init; }

    /// <summary>Degrees of freedom behind <see cref="Interval"/> and <see cref="P"/>.</summary>
    public double? DegreesOfFreedom { get; init; }

    /// <summary>Why the estimate is undefined, as a sentence for people; null when it is defined.</summary>
    public string? Undefined { get; init; }

    /// <summary>Whether there is a value.</summary>
    public bool IsDefined => Value is not null;

    /// <summary>An estimate that the data do not support.</summary>
    /// <param name="method">The estimator asked for.</param>
    /// <param name="reason">What is lacking, as a sentence: "needs at least 3 values before the cue, got 1".</param>
    public static Estimate NotDefined(string method, string reason) => new() { Method = method, Undefined = reason };

    /// <summary>An estimate from numbers that arithmetic may have taken out of range: what is not a number is left out, never kept.</summary>
    /// <param name="method">The estimator.</param>
    /// <param name="value">The estimate; when it is not finite the result is undefined.</param>
    /// <param name="standardError">Kept when finite.</param>
    /// <param name="interval">Kept when neither limit is NaN.</param>
    /// <param name="p">Kept when a number.</param>
    /// <param name="degreesOfFreedom">Kept when finite.</param>
    public static Estimate Of(
        string method, double value, double? standardError = null, Interval? interval = null, double? p = null, double? degreesOfFreedom = null)
    {
        if (!double.IsFinite(value))
            return NotDefined(method, "the values are so large or so small that the arithmetic leaves the range of numbers");
        return new Estimate
        {
            Method = method,
            Value = value,
            StandardError = standardError is { } se && double.IsFinite(se) ? se : null,
            Interval = interval is { } limits && limits.Low <= limits.High ? limits : null,
            P = p is { } probability && !double.IsNaN(probability) ? probability : null,
            DegreesOfFreedom = degreesOfFreedom is { } df && double.IsFinite(df) ? df : null,
        };
    }
}
