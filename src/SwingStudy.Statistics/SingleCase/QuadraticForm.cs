namespace SwingStudy.Statistics.SingleCase;

/// <summary>The distribution of a weighted sum of independent squared standard normals.</summary>
internal static class QuadraticForm
{
    /// <summary>P(Σ wᵢ zᵢ² &lt; 0) by numerical inversion of the characteristic function.</summary>
    /// <remarks>
    /// P = ½ − (1/π) ∫₀^∞ sin θ(u)/(u ρ(u)) du, θ = ½ Σ arctan(wᵢu), ρ = Π(1 + wᵢ²u²)^¼. With u = e^x/max|w| the integrand falls off
    /// exponentially on both sides, where the trapezoidal rule converges geometrically. Source: Imhof (1961), Biometrika 48:419–426.
    /// </remarks>
    /// <param name="weights">At least one weight, all finite, not all zero.</param>
    public static double ProbabilityBelowZero(ReadOnlySpan<double> weights)
    {
        double largest = 0, least = double.PositiveInfinity, most = double.NegativeInfinity;
        foreach (var w in weights)
        {
            largest = Math.Max(largest, Math.Abs(w));
            least = Math.Min(least, w);
            most = Math.Max(most, w);
        }

        if (least >= 0)
            return 0;
        if (most <= 0)
            return 1;
        const double Step = 1.0 / 64;
        var sum = 0.0;
        for (var x = -40.0; x < 200; x += Step)
        {
            var u = Math.Exp(x);
            double angle = 0, damping = 0;
            foreach (var w in weights)
            {
                var scaled = w / largest * u;
                angle += Math.Atan(scaled);
                damping += Math.Log(1 + (scaled * scaled));
            }

            var envelope = Math.Exp(-damping / 4);
            sum += Math.Sin(angle / 2) * envelope;
            if (x > 0 && envelope < 1e-17)
                break;
        }

        // Far below the left end the integrand of the substituted integral is negligible: it falls like u.
        return Math.Clamp(0.5 - (sum * Step / Math.PI), 0, 1);
    }
}
