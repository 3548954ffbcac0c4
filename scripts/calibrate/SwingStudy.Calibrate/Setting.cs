namespace SwingStudy.Calibrate;

/// <summary>One truth to simulate from, swing standard deviation 1.</summary>
/// <param name="Sessions">Sessions in each phase.</param>
/// <param name="Swings">Swings in each session.</param>
/// <param name="SessionDeviation">Standard deviation between sessions.</param>
/// <param name="Dependence">Correlation of neighbouring swings.</param>
internal sealed record Setting(int Sessions, int Swings, double SessionDeviation, double Dependence)
{
    private static readonly int[] SessionCounts = [1, 2, 3, 5];
    private static readonly int[] SwingCounts = [5, 10, 20];
    private static readonly double[] Deviations = [0, 0.5, 1];
    private static readonly double[] Dependences = [0, 0.2, 0.4];

    public static IEnumerable<Setting> Grid() =>
        from sessions in SessionCounts
        from swings in SwingCounts
        from deviation in Deviations
        from dependence in Dependences
        select new Setting(sessions, swings, deviation, dependence);
}
