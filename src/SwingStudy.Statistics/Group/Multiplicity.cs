namespace SwingStudy.Statistics.Group;

/// <summary>Adjustment of p values for looking at several outcomes. Adjusted values keep the order given.</summary>
public static class Multiplicity
{
    /// <summary>min(1, m p).</summary>
    /// <exception cref="ArgumentException">A p value is not between 0 and 1.</exception>
    public static double[] Bonferroni(ReadOnlySpan<double> p)
    {
        Check(p);
        var adjusted = p.ToArray();
        for (var i = 0; i < adjusted.Length; i++)
            adjusted[i] = Math.Min(1, adjusted[i] * adjusted.Length);
        return adjusted;
    }

    /// <summary>Step-down: largest of (m − i + 1) p₍ᵢ₎ so far. Holds the family error under any dependence.</summary>
    /// <remarks>Source: Holm (1979), Scandinavian Journal of Statistics 6:65–70.</remarks>
    /// <exception cref="ArgumentException">A p value is not between 0 and 1.</exception>
    public static double[] Holm(ReadOnlySpan<double> p)
    {
        var (order, adjusted) = Ordered(p);
        var running = 0.0;
        for (var i = 0; i < order.Length; i++)
        {
            running = Math.Max(running, Math.Min(1, (order.Length - i) * p[order[i]]));
            adjusted[order[i]] = running;
        }

        return adjusted;
    }

    /// <summary>Step-up: smallest of (m − i + 1) p₍ᵢ₎ from above. Holds the family error for independent or positively dependent tests.</summary>
    /// <remarks>Source: Hochberg (1988), Biometrika 75:800–802.</remarks>
    /// <exception cref="ArgumentException">A p value is not between 0 and 1.</exception>
    public static double[] Hochberg(ReadOnlySpan<double> p) => StepUp(p, (i, m) => m - i);

    /// <summary>Step-up m/i: expected share of false findings, independent or positively dependent tests.</summary>
    /// <remarks>Source: Benjamini and Hochberg (1995), JRSS B 57:289–300.</remarks>
    /// <exception cref="ArgumentException">A p value is not between 0 and 1.</exception>
    public static double[] BenjaminiHochberg(ReadOnlySpan<double> p) => StepUp(p, (i, m) => m / (i + 1.0));

    /// <summary>Step-up m (Σ 1/j)/i: expected share of false findings under any dependence.</summary>
    /// <remarks>Source: Benjamini and Yekutieli (2001), Annals of Statistics 29:1165–1188.</remarks>
    /// <exception cref="ArgumentException">A p value is not between 0 and 1.</exception>
    public static double[] BenjaminiYekutieli(ReadOnlySpan<double> p)
    {
        var harmonic = Enumerable.Range(1, p.Length).Sum(j => 1.0 / j);
        return StepUp(p, (i, m) => harmonic * m / (i + 1.0));
    }

    private static double[] StepUp(ReadOnlySpan<double> p, Func<int, int, double> factor)
    {
        var (order, adjusted) = Ordered(p);
        var running = 1.0;
        for (var i = order.Length - 1; i >= 0; i--)
        {
            running = Math.Min(running, factor(i, order.Length) * p[order[i]]);
            adjusted[order[i]] = running;
        }

        return adjusted;
    }

    private static (int[] Order, double[] Adjusted) Ordered(ReadOnlySpan<double> p)
    {
        Check(p);
        var keys = p.ToArray();
        var order = Enumerable.Range(0, p.Length).ToArray();
        Array.Sort(keys, order);
        return (order, new double[p.Length]);
    }

    private static void Check(ReadOnlySpan<double> p)
    {
        for (var i = 0; i < p.Length; i++)
        {
            if (!(p[i] >= 0 && p[i] <= 1))
                throw new ArgumentException($"A p value lies between 0 and 1; place {i + 1} holds {p[i]}.", nameof(p));
        }
    }
}
