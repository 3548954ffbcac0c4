using MathNet.Numerics.LinearAlgebra;

namespace SwingStudy.Statistics.SingleCase;

/// <summary>A random intercept for each case with first-order autoregressive errors, as a function of the share of variance between cases and φ.</summary>
internal sealed class CaseMixedModel
{
    private const double Edge = 0.999;
    private readonly BetweenCaseSeries _series;
    private readonly List<(Matrix<double> X, Vector<double> Y, int[] Times)> _blocks = [];

    public CaseMixedModel(BetweenCaseSeries series)
    {
        _series = series;
        for (int start = 0, end; start < series.Count; start = end)
        {
            end = start + 1;
            while (end < series.Count && series.CaseOf[end] == series.CaseOf[start])
                end++;
            var first = start;
            var x = Matrix<double>.Build.Dense(end - start, 2, (i, j) => j == 0 || series.Treated[first + i] ? 1 : 0);
            _blocks.Add((x, Vector<double>.Build.DenseOfArray(series.Values[start..end]), series.TimeOf[start..end]));
        }

        HasScatter = Enumerable.Range(1, Math.Max(0, series.Count - 1))
            .Any(i => series.SamePhase(i, i - 1) && Math.Abs(series.Values[i] - series.Values[i - 1]) > 1e-14);
    }

    /// <summary>Whether any two neighbouring values of a phase differ.</summary>
    public bool HasScatter { get; }

    /// <summary>Generalized least squares and the profile restricted likelihood at one place.</summary>
    /// <param name="share">Share of the total variance between cases, in [0, 1).</param>
    /// <param name="phi">Autocorrelation, in (−1, 1).</param>
    public (Vector<double> Coefficients, Matrix<double> Covariance, double Variance, double LogLikelihood) At(double share, double phi)
    {
        double n = _series.Count, logDeterminant = 0, yy = 0;
        var xx = Matrix<double>.Build.Dense(2, 2);
        var xy = Vector<double>.Build.Dense(2);
        foreach (var (x, y, times) in _blocks)
        {
            var factor = Correlation(times, share, phi).Cholesky();
            logDeterminant += factor.DeterminantLn;
            var solved = factor.Solve(x);
            var solvedY = factor.Solve(y);
            xx += x.TransposeThisAndMultiply(solved);
            xy += x.TransposeThisAndMultiply(solvedY);
            yy += y * solvedY;
        }

        var coefficients = xx.Solve(xy);
        var variance = (yy - (coefficients * xy)) / (n - 2);
        var logLikelihood = (-(n - 2) / 2 * (Math.Log(2 * Math.PI * variance) + 1)) - (logDeterminant / 2)
            - (Math.Log(xx.Determinant()) / 2);
        return (coefficients, variance * xx.Inverse(), variance, logLikelihood);
    }

    /// <summary>The place of the highest restricted likelihood; null when it lies at the edge of φ.</summary>
    public (double Share, double Phi)? Maximize()
    {
        double share = 0, phi = 0, best = double.NegativeInfinity;
        for (var i = 0; i < 20; i++)
        {
            for (var j = -19; j <= 19; j++)
            {
                var value = At(i / 20.0, j / 20.0).LogLikelihood;
                if (value > best)
                    (share, phi, best) = (i / 20.0, j / 20.0, value);
            }
        }

        // Pattern search with a step that turns along the last move: the surface is smooth, and the step ends far below the precision asked for.
        double step = 0.025;
        (double Share, double Phi)[] directions = [(1, 0), (-1, 0), (0, 1), (0, -1), (0.7, 0.7), (-0.7, -0.7), (0.7, -0.7), (-0.7, 0.7)];
        while (step > 1e-9)
        {
            var moved = false;
            foreach (var (towardsShare, towardsPhi) in directions)
            {
                var trialShare = Math.Clamp(share + (step * towardsShare), 0, 0.999999);
                var trialPhi = Math.Clamp(phi + (step * towardsPhi), -Edge, Edge);
                var value = At(trialShare, trialPhi).LogLikelihood;
                if (value > best)
                {
                    (share, phi, best) = (trialShare, trialPhi, value);
                    moved = true;
                    break;
                }
            }

            if (!moved)
                step /= 2;
        }

        return Math.Abs(phi) >= Edge ? null : (share, phi);
    }

    /// <summary>Inverse of the expected information of (τ², φ, σ²), I = ½ tr(P ∂V P ∂V).</summary>
    public Matrix<double> InverseInformation(double share, double phi, double total)
    {
        var n = _series.Count;
        double between = share * total, within = (1 - share) * total;
        var v = Matrix<double>.Build.Dense(n, n);
        var x = Matrix<double>.Build.Dense(n, 2);
        Matrix<double>[] derivatives = [Matrix<double>.Build.Dense(n, n), Matrix<double>.Build.Dense(n, n), Matrix<double>.Build.Dense(n, n)];
        var start = 0;
        foreach (var (blockX, _, times) in _blocks)
        {
            x.SetSubMatrix(start, 0, blockX);
            for (var i = 0; i < times.Length; i++)
            {
                for (var j = 0; j < times.Length; j++)
                {
                    var gap = Math.Abs(times[i] - times[j]);
                    var power = Math.Pow(phi, gap);
                    v[start + i, start + j] = between + (within * power);
                    derivatives[0][start + i, start + j] = 1;
                    derivatives[1][start + i, start + j] = gap == 0 ? 0 : within * gap * Math.Pow(phi, gap - 1);
                    derivatives[2][start + i, start + j] = power;
                }
            }

            start += times.Length;
        }

        var inverse = v.Inverse();
        var solved = inverse * x;
        var p = inverse - (solved * x.TransposeThisAndMultiply(solved).Inverse() * solved.Transpose());
        var weighted = derivatives.Select(d => p * d).ToArray();
        return Matrix<double>.Build.Dense(3, 3, (i, j) => weighted[i].PointwiseMultiply(weighted[j].Transpose()).RowSums().Sum() / 2).Inverse();
    }

    private static Matrix<double> Correlation(int[] times, double share, double phi) => Matrix<double>.Build.Dense(
        times.Length, times.Length, (i, j) => share + ((1 - share) * Math.Pow(phi, Math.Abs(times[i] - times[j]))));
}
