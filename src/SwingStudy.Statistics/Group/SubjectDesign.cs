using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Double;

namespace SwingStudy.Statistics.Group;

/// <summary>The random-effects design of one subject, U = [1, slope, one column a session], reduced to cross-products.</summary>
/// <remarks>
/// With V/σ² = W = I + U D U' and T = D½ (I + D½ N D½)⁻¹ D½, N = U'U: W⁻¹ = I − U T U' and W⁻ᵏ U = U Eᵏ with E = I − T N. Every trace and
/// product that small-sample corrections need follows from N, R = X'U and X'X.
/// </remarks>
internal sealed class SubjectDesign
{
    private SubjectDesign(int width, int fixedEffects, Dictionary<int, int> sessionColumns)
    {
        Width = width;
        SessionColumns = sessionColumns;
        (N, R, XX) = (new DenseMatrix(width), new DenseMatrix(fixedEffects, width), new DenseMatrix(fixedEffects));
        (T, D) = (N, N);
    }

    public int Width { get; }

    public int Rows { get; private set; }

    /// <summary>Column of each session of this subject.</summary>
    public Dictionary<int, int> SessionColumns { get; }

    public Matrix<double> N { get; }

    public Matrix<double> R { get; }

    public Matrix<double> XX { get; }

    public Matrix<double> T { get; private set; }

    private Matrix<double> D { get; set; }

    /// <summary>The designs of all subjects at the fitted θ.</summary>
    public static SubjectDesign[] Of(MixedModelFit fit)
    {
        var data = fit.Data;
        var outer = fit.HasSlope ? 2 : 1;
        var columns = new Dictionary<int, int>[data.SubjectCount];
        for (var i = 0; i < data.Count; i++)
        {
            var own = columns[data.Subjects[i]] ??= [];
            if (data.Sessions is not null && !own.ContainsKey(data.Sessions[i]))
                own[data.Sessions[i]] = outer + own.Count;
        }

        var p = data.FixedColumns.Length;
        var designs = columns.Select(own => new SubjectDesign(outer + own.Count, p, own)).ToArray();
        for (var i = 0; i < data.Count; i++)
            designs[data.Subjects[i]].Add(data, i, fit.SlopeScale);
        foreach (var design in designs)
            design.SetCovariance(fit);
        return designs;
    }

    /// <summary>Adds U' r of one row to <paramref name="target"/>.</summary>
    public void AddRandomRow(double[] target, MixedModelData data, int row, double slopeScale, double r)
    {
        target[0] += r;
        if (data.Slope is not null)
            target[1] += r * data.Slope[row] / slopeScale;
        if (data.Sessions is not null)
            target[SessionColumns[data.Sessions[row]]] += r;
    }

    /// <summary>D U' W⁻¹ r from U' r: D (I − N T) U' r.</summary>
    public double[] Predict(double[] residual)
    {
        var sums = DenseVector.OfArray(residual);
        return (D * (sums - (N * (T * sums)))).ToArray();
    }

    private void Add(MixedModelData data, int row, double slopeScale)
    {
        Rows++;
        var u = new double[Width];
        AddRandomRow(u, data, row, slopeScale, 1);
        for (var a = 0; a < Width; a++)
        {
            if (u[a] == 0)
                continue;
            for (var b = 0; b < Width; b++)
                N[a, b] += u[a] * u[b];
            for (var c = 0; c < data.FixedColumns.Length; c++)
                R[c, a] += data.FixedColumns[c][row] * u[a];
        }

        for (var c = 0; c < data.FixedColumns.Length; c++)
        {
            for (var d = 0; d < data.FixedColumns.Length; d++)
                XX[c, d] += data.FixedColumns[c][row] * data.FixedColumns[d][row];
        }
    }

    private void SetCovariance(MixedModelFit fit)
    {
        var root = new DenseMatrix(Width);
        root[0, 0] = fit.Theta[0];
        if (fit.HasSlope)
            (root[1, 0], root[1, 1]) = (fit.Theta[1], fit.Theta[2]);
        foreach (var column in SessionColumns.Values)
            root[column, column] = fit.Theta[^1];
        D = root * root.Transpose();
        var identity = DenseMatrix.CreateIdentity(Width);
        T = root * (identity + (root.Transpose() * N * root)).Inverse() * root.Transpose();
    }
}
