using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Double;

namespace SwingStudy.Statistics.Group;

/// <summary>Kenward and Roger's covariance of the fixed effects and degrees of freedom.</summary>
/// <remarks>
/// V = Σ γ_r G_r, P_r = −X'V⁻¹G_rV⁻¹X, Q_rs = X'V⁻¹G_rV⁻¹G_sV⁻¹X, Φ = (X'V⁻¹X)⁻¹, expected information
/// I_rs = ½ [tr(V⁻¹G_rV⁻¹G_s) − 2 tr(ΦQ_rs) + tr(ΦP_rΦP_s)], C = I⁻¹, Φ_A = Φ + 2 Φ Σ C_rs (Q_rs − P_rΦP_s) Φ. For one combination l the
/// scale is 1 and df = 2 (l'Φl)² / Σ C_rs (l'ΦP_rΦl)(l'ΦP_sΦl). V is linear in γ, so no second derivatives enter. All products come from
/// subject-wise cross-products, at σ² = 1 and scaled back. Source: Kenward and Roger (1997), Biometrics 53:983–997.
/// </remarks>
internal sealed class KenwardRogerAdjustment
{
    private readonly Matrix<double> _phi;
    private readonly Matrix<double>[] _p;
    private readonly Matrix<double> _c;
    private readonly double _sigmaSquared;

    private KenwardRogerAdjustment(MixedModelFit fit)
    {
        _sigmaSquared = fit.ResidualVariance;
        _phi = DenseMatrix.OfArray(fit.UnscaledCovariance);
        var parameters = Parameters(fit);
        var (count, size) = (parameters.Count, _phi.RowCount);
        _p = [.. Enumerable.Range(0, count).Select(_ => (Matrix<double>)new DenseMatrix(size))];
        var q = new Matrix<double>[count, count];
        var traces = new DenseMatrix(count);
        for (var r = 0; r < count; r++)
        {
            for (var s = 0; s < count; s++)
                q[r, s] = new DenseMatrix(size);
        }

        foreach (var design in SubjectDesign.Of(fit))
            Add(design, parameters, q, traces);
        var information = new DenseMatrix(count);
        for (var r = 0; r < count; r++)
        {
            for (var s = 0; s < count; s++)
                information[r, s] = 0.5 * (traces[r, s] - (2 * (_phi * q[r, s]).Trace()) + (_phi * _p[r] * _phi * _p[s]).Trace());
        }

        _c = PseudoInverse(information);
        var adjustment = new DenseMatrix(size);
        for (var r = 0; r < count; r++)
        {
            for (var s = 0; s < count; s++)
                adjustment = (DenseMatrix)(adjustment + (_c[r, s] * (q[r, s] - (_p[r] * _phi * _p[s]))));
        }

        var adjusted = _phi + (2 * _phi * adjustment * _phi);
        Covariance = ((adjusted + adjusted.Transpose()) / 2 * _sigmaSquared).ToArray();
    }

    /// <summary>Φ_A.</summary>
    public double[,] Covariance { get; }

    public static KenwardRogerAdjustment Of(MixedModelFit fit) => new(fit);

    /// <summary>Adjusted variance and degrees of freedom of one combination.</summary>
    public (double Variance, double Df) Test(ReadOnlySpan<double> weights)
    {
        var l = DenseVector.OfArray(weights.ToArray());
        var direction = _phi * l;
        var plain = l.DotProduct(direction);
        var slopes = DenseVector.OfEnumerable(_p.Select(p => direction.DotProduct(p * direction)));
        return (l.DotProduct(DenseMatrix.OfArray(Covariance) * l), 2 * plain * plain / slopes.DotProduct(_c * slopes));
    }

    /// <summary>Parts of D that each γ multiplies: (row, column) pairs of the outer block, or the sessions; the error comes last.</summary>
    private static List<Func<SubjectDesign, Matrix<double>>> Parameters(MixedModelFit fit)
    {
        var parameters = new List<Func<SubjectDesign, Matrix<double>>> { d => Unit(d, (0, 0)) };
        if (fit.HasSlope)
        {
            parameters.Add(d => Unit(d, (0, 1), (1, 0)));
            parameters.Add(d => Unit(d, (1, 1)));
        }

        if (fit.Data.Sessions is not null)
            parameters.Add(d => Unit(d, [.. d.SessionColumns.Values.Select(c => (c, c))]));
        parameters.Add(_ => null!);
        return parameters;
    }

    private static DenseMatrix Unit(SubjectDesign design, params (int Row, int Column)[] ones)
    {
        var matrix = new DenseMatrix(design.Width);
        foreach (var (row, column) in ones)
            matrix[row, column] = 1;
        return matrix;
    }

    private void Add(SubjectDesign design, List<Func<SubjectDesign, Matrix<double>>> parameters, Matrix<double>[,] q, DenseMatrix traces)
    {
        var e = DenseMatrix.CreateIdentity(design.Width) - (design.T * design.N);

        // Powers W⁻ᵏ between U and U, X and U, X and X.
        var (uu1, xu1) = (design.N * e, design.R * e);
        var (uu2, xu2) = (uu1 * e, xu1 * e);
        var rt = design.R.Transpose();
        var xx2 = design.XX - (design.R * design.T * rt) - (design.R * e * design.T * rt);
        var xx3 = xx2 - (design.R * e * e * design.T * rt);
        var trace2 = design.Rows - (((design.T + (e * design.T)) * design.N).Trace());
        var last = parameters.Count - 1;
        var parts = parameters.Take(last).Select(build => build(design)).ToArray();
        for (var r = 0; r < last; r++)
        {
            _p[r] -= xu1 * parts[r] * xu1.Transpose();
            for (var s = 0; s < last; s++)
            {
                q[r, s] += xu1 * parts[r] * uu1 * parts[s] * xu1.Transpose();
                traces[r, s] += (parts[r] * uu1 * parts[s] * uu1).Trace();
            }

            q[r, last] += xu1 * parts[r] * xu2.Transpose();
            q[last, r] += xu2 * parts[r] * xu1.Transpose();
            var mixed = (parts[r] * uu2).Trace();
            traces[r, last] += mixed;
            traces[last, r] += mixed;
        }

        _p[last] -= xx2;
        q[last, last] += xx3;
        traces[last, last] += trace2;
    }

    /// <summary>Parameters that the data say nothing about drop out; judged after scaling, as variances differ widely in size.</summary>
    private static Matrix<double> PseudoInverse(DenseMatrix information)
    {
        var scale = DiagonalMatrix.OfDiagonal(
            information.RowCount, information.RowCount, information.Diagonal().Select(d => d > 0 ? 1 / Math.Sqrt(d) : 0));
        var eigen = (scale * information * scale).Evd(Symmetricity.Symmetric);
        var inverse = Matrix<double>.Build.Dense(information.RowCount, information.RowCount);
        for (var i = 0; i < information.RowCount; i++)
        {
            if (eigen.EigenValues[i].Real > 1e-10)
                inverse += eigen.EigenVectors.Column(i).OuterProduct(eigen.EigenVectors.Column(i)) / eigen.EigenValues[i].Real;
        }

        return scale * inverse * scale;
    }
}
