using SwingStudy.Statistics.Results;

namespace SwingStudy.Pipeline.Analyse.Group;

/// <summary>One estimate over players.</summary>
internal sealed record GroupEffect
{
    /// <summary>Measure of what differs truly between players: standard deviation of their true changes.</summary>
    public const string IndividualResponse = "individual-response-sd";

    /// <summary>Measure of how many players have a supported change.</summary>
    public const string PlayersSupported = "players-supported";

    /// <summary>Measure of the randomization test over players that were drawn together.</summary>
    public const string RandomizationTest = "randomization-test";

    public required string Outcome { get; init; }

    public required string Contrast { get; init; }

    public required string Measure { get; init; }

    public required Estimate Estimate { get; init; }

    /// <summary>p adjusted over the planned comparisons of outcomes of the same role; null where none is planned.</summary>
    public double? AdjustedP { get; init; }

    /// <summary>Variance of true effects between players; null where the measure has none.</summary>
    public double? TauSquared { get; init; }

    /// <summary>Percent of the variation of estimates that is between players.</summary>
    public double? ISquared { get; init; }

    /// <summary>Where the true effect of a further player may lie.</summary>
    public Interval? Prediction { get; init; }

    /// <summary>Players in the estimate.</summary>
    public required int Players { get; init; }

    public required string? Unit { get; init; }

    public required bool Planned { get; init; }
}
