namespace SwingStudy.Statistics.Resampling;

/// <summary>Numbers of ways to choose and to order.</summary>
internal static class Choices
{
    /// <summary>Number of ways to choose <paramref name="k"/> of <paramref name="n"/>, exact up to 2^53; infinity beyond the range of numbers.</summary>
    public static double Binomial(int n, int k)
    {
        if (k < 0 || k > n)
            return 0;
        var ways = 1.0;
        for (var i = 1; i <= Math.Min(k, n - k); i++)
            ways = ways * (n - i + 1) / i;
        return ways < 1L << 53 ? Math.Round(ways) : ways;
    }

    /// <summary>Number of orders of <paramref name="n"/> things; infinity beyond the range of numbers.</summary>
    public static double Factorial(int n)
    {
        var orders = 1.0;
        for (var i = 2; i <= n; i++)
            orders *= i;
        return orders;
    }
}
