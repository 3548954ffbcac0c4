namespace SwingStudy.Statistics.Group;

/// <summary>The profiled likelihood of a mixed model at given relative covariance parameters θ.</summary>
internal sealed class Likelihood(MixedModelBlocks blocks, bool isRestricted)
{
    private readonly double[] _total = new double[(blocks.FixedEffects + 1) * (blocks.FixedEffects + 1)];

    /// <summary>n − p under REML, n under ML.</summary>
    public double Divisor { get; } = isRestricted ? blocks.Rows - blocks.FixedEffects : blocks.Rows;

    public int FixedEffects => blocks.FixedEffects;

    public int Parameters => blocks.Parameters;

    /// <summary>−2 ln L maximised over β and σ.</summary>
    /// <exception cref="ArgumentException">The fixed effects are collinear.</exception>
    public double Deviance(ReadOnlySpan<double> theta)
    {
        var (logW, logX, squares) = Evaluate(theta);
        return (Divisor * (1 + Math.Log(2 * Math.PI * squares / Divisor))) + logW + (isRestricted ? logX : 0);
    }

    /// <summary>−2 ln L maximised over β only, at a given σ.</summary>
    public double Deviance(ReadOnlySpan<double> theta, double sigma)
    {
        var (logW, logX, squares) = Evaluate(theta);
        return (Divisor * Math.Log(2 * Math.PI * sigma * sigma)) + logW + (isRestricted ? logX : 0) + (squares / (sigma * sigma));
    }

    /// <summary>β, (X' W⁻¹ X)⁻¹ and the weighted residual sum of squares.</summary>
    public (double[] Beta, double[,] Inverse, double Squares) Solve(ReadOnlySpan<double> theta)
    {
        var (_, _, squares) = Evaluate(theta);
        var (p, width) = (FixedEffects, FixedEffects + 1);
        var beta = new double[p];
        var inverse = new double[p, p];
        for (var r = p - 1; r >= 0; r--)
        {
            var sum = _total[(p * width) + r];
            for (var k = r + 1; k < p; k++)
                sum -= _total[(k * width) + r] * beta[k];
            beta[r] = sum / _total[(r * width) + r];
        }

        // Columns of L⁻¹, then (L L')⁻¹ = L⁻ᵀ L⁻¹.
        var lower = new double[p, p];
        for (var c = 0; c < p; c++)
        {
            for (var r = c; r < p; r++)
            {
                var sum = r == c ? 1.0 : 0;
                for (var k = c; k < r; k++)
                    sum -= _total[(r * width) + k] * lower[k, c];
                lower[r, c] = sum / _total[(r * width) + r];
            }
        }

        for (var r = 0; r < p; r++)
        {
            for (var c = 0; c < p; c++)
            {
                for (var k = Math.Max(r, c); k < p; k++)
                    inverse[r, c] += lower[k, r] * lower[k, c];
            }
        }

        return (beta, inverse, squares);
    }

    /// <summary>Whether, weighted by these variances, one fixed effect is a combination of the others.</summary>
    public bool IsCollinearAt(ReadOnlySpan<double> theta) => Factor(theta) is null;

    private (double LogW, double LogX, double Squares) Evaluate(ReadOnlySpan<double> theta) =>
        Factor(theta) ?? throw new ArgumentException("The fixed effects are collinear: one is a combination of the others.");

    /// <summary>Factors [X y]' W⁻¹ [X y] in place; the last pivot is the residual sum of squares. Null when X has not full rank.</summary>
    private (double LogW, double LogX, double Squares)? Factor(ReadOnlySpan<double> theta)
    {
        Array.Clear(_total);
        var logW = blocks.Accumulate(theta, _total);
        var width = FixedEffects + 1;
        var logX = 0.0;
        for (var c = 0; c < width; c++)
        {
            var size = _total[(c * width) + c];
            var pivot = size;
            for (var k = 0; k < c; k++)
                pivot -= _total[(c * width) + k] * _total[(c * width) + k];
            if (c == FixedEffects)
                return (logW, logX, Math.Max(pivot, 0));
            if (!(pivot > 1e-12 * size))
                return null;
            pivot = Math.Sqrt(pivot);
            logX += 2 * Math.Log(pivot);
            _total[(c * width) + c] = pivot;
            for (var r = c + 1; r < width; r++)
            {
                var sum = _total[(r * width) + c];
                for (var k = 0; k < c; k++)
                    sum -= _total[(r * width) + k] * _total[(c * width) + k];
                _total[(r * width) + c] = sum / pivot;
            }
        }

        throw new InvalidOperationException("The factorisation always ends at the last column.");
    }
}
