namespace SwingStudy.Statistics.Planning;

/// <summary>What a study of one size can be expected to show.</summary>
public sealed record PlannedPower
{
    /// <summary>The design and its test, the method word.</summary>
    public required string Method { get; init; }

    /// <summary>Share of simulated studies with p at or below alpha.</summary>
    public required double Power { get; init; }

    /// <summary>Standard error of <see cref="Power"/> from the number of simulated studies.</summary>
    public double MonteCarloError => Math.Sqrt(Power * (1 - Power) / Replications);

    /// <summary>Mean of the estimated change over simulated studies, in the outcome's unit.</summary>
    public required double MeanEstimate { get; init; }

    /// <summary>Standard deviation of the estimated change over simulated studies: the precision to expect.</summary>
    public required double StandardErrorOfEstimate { get; init; }

    /// <summary>Mean half-width of the interval of the change; null for designs judged by a randomization test alone.</summary>
    public double? MeanHalfWidth { get; init; }

    /// <summary>The smallest p that the design can give; null for t tests. Above alpha no data can be significant.</summary>
    public double? SmallestPossibleP { get; init; }

    /// <summary>Number of simulated studies.</summary>
    public required int Replications { get; init; }
}
