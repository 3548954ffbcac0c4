namespace SwingStudy.Statistics.Distributions;

/// <summary>The checks on arguments of distributions.</summary>
internal static class Parameter
{
    public static void RequireNumber(double value, string name)
    {
        if (double.IsNaN(value))
            throw new ArgumentOutOfRangeException(name, value, "Must be a number.");
    }

    public static void RequireProbability(double p)
    {
        if (!(p >= 0 && p <= 1))
            throw new ArgumentOutOfRangeException(nameof(p), p, "A probability lies between 0 and 1.");
    }

    public static void RequirePositive(double value, string name)
    {
        if (!(value > 0))
            throw new ArgumentOutOfRangeException(name, value, "Must be greater than 0.");
    }
}
