using MathNet.Numerics.LinearAlgebra.Double;

namespace SwingStudy.Statistics.Group;

/// <summary>Satterthwaite's degrees of freedom of a combination of fixed effects.</summary>
/// <remarks>
/// df = 2 f²/(g' A g): f = variance of the combination, g its gradient and A the asymptotic covariance in (θ, ln σ), from the second
/// differences of the deviance. Sources: Satterthwaite (1946), Biometrics Bulletin 2:110–114; Giesbrecht and Burns (1985), Biometrics 41:477–486.
/// </remarks>
internal static class SatterthwaiteDegrees
{
    public static (double Variance, double Df) Of(MixedModelFit fit, ReadOnlySpan<double> weights)
    {
        var l = weights.ToArray();
        var q = fit.Theta.Length;
        double[] point = [.. fit.Theta, Math.Log(fit.ResidualVariance) / 2];
        double Deviance(ReadOnlySpan<double> x) => fit.Likelihood.Deviance(x[..q], Math.Exp(x[q]));
        double Variance(ReadOnlySpan<double> x) => Math.Exp(2 * x[q]) * Quadratic(l, fit.Likelihood.Solve(x[..q]).Inverse);
        var hessian = SmoothMinimum.Hessian(Deviance, point, Deviance(point));
        var gradient = DenseVector.OfArray(SmoothMinimum.Gradient(Variance, point));
        var variance = Variance(point);

        // Directions without curvature (a variance at zero) carry no information and no gradient.
        var eigen = DenseMatrix.OfArray(hessian).Evd(MathNet.Numerics.LinearAlgebra.Symmetricity.Symmetric);
        var spread = 0.0;
        var largest = eigen.EigenValues.Max(e => e.Real);
        for (var i = 0; i <= q; i++)
        {
            var value = eigen.EigenValues[i].Real;
            if (value > 1e-8 * largest)
                spread += 2 * Math.Pow(eigen.EigenVectors.Column(i).DotProduct(gradient), 2) / value;
        }

        return (variance, 2 * variance * variance / spread);
    }

    private static double Quadratic(double[] l, double[,] matrix)
    {
        var sum = 0.0;
        for (var r = 0; r < l.Length; r++)
        {
            for (var c = 0; c < l.Length; c++)
                sum += l[r] * matrix[r, c] * l[c];
        }

        return sum;
    }
}
