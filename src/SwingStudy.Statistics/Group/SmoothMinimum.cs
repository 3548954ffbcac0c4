namespace SwingStudy.Statistics.Group;

/// <summary>The minimum of a smooth function of a few variables by damped Newton steps with differences for derivatives.</summary>
/// <remarks>Source: Nocedal and Wright (2006), Numerical Optimization, ch. 3 and 8.</remarks>
internal static class SmoothMinimum
{
    public delegate double Function(ReadOnlySpan<double> x);

    /// <summary>Walks downhill from <paramref name="start"/>; the function is of order 1 in scale of each variable.</summary>
    /// <returns>The point reached, and whether the last predicted gain was negligible.</returns>
    public static (double[] X, bool HasConverged) From(Function function, double[] start)
    {
        var x = (double[])start.Clone();
        var value = function(x);
        var damping = 1e-3;
        for (var iteration = 0; iteration < 200; iteration++)
        {
            var gradient = Gradient(function, x);
            var hessian = Hessian(function, x, value);
            while (true)
            {
                if (damping > 1e12)
                    return (x, true);
                if (Step(hessian, gradient, damping) is not { } step)
                {
                    damping *= 10;
                    continue;
                }

                var next = x.Zip(step, (a, b) => a + b).ToArray();
                var lower = function(next);
                var gain = -step.Zip(gradient, (s, g) => s * g).Sum();
                if (lower <= value)
                {
                    (x, value) = (next, lower);
                    damping = Math.Max(damping / 10, 1e-12);
                    if (gain < 1e-9)
                        return (x, true);
                    break;
                }

                if (gain < 1e-9)
                    return (x, true);
                damping *= 10;
            }
        }

        return (x, false);
    }

    /// <summary>Central differences of the first order.</summary>
    public static double[] Gradient(Function function, double[] x)
    {
        var gradient = new double[x.Length];
        for (var i = 0; i < x.Length; i++)
        {
            var h = 1e-5 * Math.Max(0.1, Math.Abs(x[i]));
            gradient[i] = (At(function, x, (i, h)) - At(function, x, (i, -h))) / (2 * h);
        }

        return gradient;
    }

    /// <summary>Central differences of the second order.</summary>
    public static double[,] Hessian(Function function, double[] x, double value)
    {
        var n = x.Length;
        var hessian = new double[n, n];
        double Width(int i) => 1e-3 * Math.Max(0.1, Math.Abs(x[i]));
        for (var i = 0; i < n; i++)
        {
            var h = Width(i);
            hessian[i, i] = (At(function, x, (i, h)) - (2 * value) + At(function, x, (i, -h))) / (h * h);
            for (var j = 0; j < i; j++)
            {
                var k = Width(j);
                var mixed = At(function, x, (i, h), (j, k)) - At(function, x, (i, h), (j, -k)) - At(function, x, (i, -h), (j, k)) + At(function, x, (i, -h), (j, -k));
                hessian[i, j] = hessian[j, i] = mixed / (4 * h * k);
            }
        }

        return hessian;
    }

    private static double At(Function function, double[] x, params ReadOnlySpan<(int Index, double Change)> moves)
    {
        Span<double> point = stackalloc double[x.Length];
        x.CopyTo(point);
        foreach (var (index, change) in moves)
            point[index] += change;
        return function(point);
    }

    /// <summary>Solves (H + damping · |diag H|) s = −g; null when the matrix is not positive definite.</summary>
    private static double[]? Step(double[,] hessian, double[] gradient, double damping)
    {
        var n = gradient.Length;
        var lower = new double[n, n];
        for (var c = 0; c < n; c++)
        {
            var pivot = hessian[c, c] + (damping * Math.Max(Math.Abs(hessian[c, c]), 1e-6));
            for (var k = 0; k < c; k++)
                pivot -= lower[c, k] * lower[c, k];
            if (!(pivot > 0))
                return null;
            lower[c, c] = Math.Sqrt(pivot);
            for (var r = c + 1; r < n; r++)
            {
                var sum = hessian[r, c];
                for (var k = 0; k < c; k++)
                    sum -= lower[r, k] * lower[c, k];
                lower[r, c] = sum / lower[c, c];
            }
        }

        var step = new double[n];
        for (var r = 0; r < n; r++)
        {
            var sum = -gradient[r];
            for (var k = 0; k < r; k++)
                sum -= lower[r, k] * step[k];
            step[r] = sum / lower[r, r];
        }

        for (var r = n - 1; r >= 0; r--)
        {
            for (var k = r + 1; k < n; k++)
                step[r] -= lower[k, r] * step[k];
            step[r] /= lower[r, r];
        }

        return step;
    }
}
