namespace SwingStudy.Calibrate;

/// <summary>A player who has one session in a phase, and what the study's other players tell about days.</summary>
/// <param name="Before">Sessions before.</param>
/// <param name="After">Sessions after.</param>
/// <param name="Swings">Swings in each of the player's sessions.</param>
/// <param name="Pairs">Other players, two sessions each: the degrees of freedom between sessions.</param>
/// <param name="OthersSwings">Swings in each of their sessions.</param>
/// <param name="SessionDeviation">Standard deviation between sessions, swing standard deviation 1.</param>
internal sealed record BorrowedNoise(int Before, int After, int Swings, int Pairs, int OthersSwings, double SessionDeviation)
{
    private static readonly (int Before, int After)[] Designs = [(1, 1), (2, 1), (3, 1)];
    private static readonly (int Own, int Others)[] SwingCounts = [(5, 20), (10, 10), (20, 5)];
    private static readonly int[] PairCounts = [1, 2, 5, 20];
    private static readonly double[] Deviations = [0, 0.2, 0.5, 1];

    /// <summary>Standard error of the change that someone would have who knew all variances.</summary>
    public double StandardError => Math.Sqrt(((SessionDeviation * SessionDeviation) + (1.0 / Swings)) * ((1.0 / Before) + (1.0 / After)));

    public static IEnumerable<BorrowedNoise> Grid() =>
        from design in Designs
        from swings in SwingCounts
        from pairs in PairCounts
        from deviation in Deviations
        select new BorrowedNoise(design.Before, design.After, swings.Own, pairs, swings.Others, deviation);
}
