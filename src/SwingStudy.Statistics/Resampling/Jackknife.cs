using SwingStudy.Statistics.Description;

namespace SwingStudy.Statistics.Resampling;

/// <summary>A statistic with each row (or cluster) left out in turn.</summary>
/// <remarks>Source: Efron and Tibshirani (1993), An Introduction to the Bootstrap, ch. 11 and sec. 14.3.</remarks>
public sealed record Jackknife
{
    private Jackknife(double[] values)
    {
        Values = values;
    }

    /// <summary>The statistic without row 1, 2, ….</summary>
    public IReadOnlyList<double> Values { get; }

    /// <summary>√((n − 1)/n · Σ(vᵢ − v̄)²).</summary>
    public double StandardError => Math.Sqrt((Values.Count - 1.0) / Values.Count * Summary.Of([.. Values]).SumOfSquares);

    /// <summary>Acceleration Σlᵢ³/(6(Σlᵢ²)^1.5), lᵢ = v̄ − vᵢ; zero when the values do not vary.</summary>
    public double Acceleration => AccelerationOf([.. Values]);

    /// <summary>(n − 1)(v̄ − t) for the statistic t of all rows.</summary>
    public double Bias(double observed) => (Values.Count - 1) * (Summary.Of([.. Values]).Mean!.Value - observed);

    /// <summary>The jackknife from values computed elsewhere.</summary>
    /// <param name="values">The statistic without each row in turn, at least two.</param>
    /// <exception cref="ArgumentException">There are fewer than two values or one is not finite.</exception>
    public static Jackknife Of(ReadOnlySpan<double> values)
    {
        if (values.Length < 2)
            throw new ArgumentException($"At least two rows are left out in turn; got {values.Length}.", nameof(values));
        Finite.RequireComputed(values, nameof(values));
        return new Jackknife(values.ToArray());
    }

    internal static double AccelerationOf(ReadOnlySpan<double> values)
    {
        var mean = Summary.Of(values).Mean!.Value;
        var largest = 0.0;
        foreach (var value in values)
            largest = Math.Max(largest, Math.Abs(mean - value));
        if (largest == 0)
            return 0;
        double squares = 0, cubes = 0;
        foreach (var value in values)
        {
            var l = (mean - value) / largest;
            squares += l * l;
            cubes += l * l * l;
        }

        return cubes / (6 * Math.Pow(squares, 1.5));
    }
}
