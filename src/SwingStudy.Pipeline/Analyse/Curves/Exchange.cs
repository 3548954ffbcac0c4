namespace SwingStudy.Pipeline.Analyse.Curves;

/// <summary>What may change places between two phases if nothing changed.</summary>
internal static class Exchange
{
    /// <summary>Session means: the test then knows the scatter from day to day.</summary>
    public const string Sessions = "sessions";

    /// <summary>Swings: the scatter from day to day is left out, so that a small p may mean another day as well as another movement.</summary>
    public const string Swings = "swings";

    /// <summary>The smallest p that exchanging sessions can give: one labelling among all, or the two mirrored ones of equal numbers.</summary>
    public static double SmallestP(int from, int to)
    {
        if (from == 0 || to == 0 || from + to < 3)
            return 1;
        var labellings = 1.0;
        for (var i = 1; i <= from; i++)
            labellings = labellings * (to + i) / i;
        return (from == to ? 2 : 1) / labellings;
    }
}
