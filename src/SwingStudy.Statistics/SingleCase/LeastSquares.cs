using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;

namespace SwingStudy.Statistics.SingleCase;

/// <summary>One least-squares fit by Householder QR, with what its covariance estimators need.</summary>
internal sealed class LeastSquares
{
    private readonly Matrix<double> _q;

    public LeastSquares(Matrix<double> x, Vector<double> y)
    {
        var qr = x.QR(QRMethod.Thin);
        _q = qr.Q;
        Coefficients = qr.R.Solve(_q.TransposeThisAndMultiply(y));
        Residuals = y - (x * Coefficients);
        var inverse = qr.R.Inverse();
        Bread = inverse * inverse.Transpose();
        ResidualSumOfSquares = Residuals * Residuals;
        DegreesOfFreedom = x.RowCount - x.ColumnCount;
        IsExact = ResidualSumOfSquares <= 1e-26 * (y * y);
    }

    public Vector<double> Coefficients { get; }

    public Vector<double> Residuals { get; }

    /// <summary>(X'X)⁻¹.</summary>
    public Matrix<double> Bread { get; }

    public double ResidualSumOfSquares { get; }

    public int DegreesOfFreedom { get; }

    /// <summary>Whether the residuals are nothing but rounding.</summary>
    public bool IsExact { get; }

    public double ResidualVariance => ResidualSumOfSquares / DegreesOfFreedom;

    /// <summary>Covariance of the coefficients for independent errors of equal variance.</summary>
    public Matrix<double> Covariance => ResidualVariance * Bread;

    /// <summary>Diagonal element of the hat matrix.</summary>
    public double Leverage(int row) => _q.Row(row) * _q.Row(row);
}
