using SwingStudy.Statistics.Chance;
using SwingStudy.Statistics.Description;

namespace SwingStudy.Statistics.Resampling;

/// <summary>mean(B) − mean(A) of every case with every start of every tier's window.</summary>
internal sealed class StartTable
{
    private readonly double[][][] _difference;
    private readonly IReadOnlyList<int[]> _windows;
    private readonly IReadOnlyList<int> _actual;

    public StartTable(IReadOnlyList<double[]> series, IReadOnlyList<int[]> windows, IReadOnlyList<int> actual, bool orderDrawn)
    {
        _windows = windows;
        _actual = actual;
        var k = series.Count;
        _difference = new double[k][][];
        for (var c = 0; c < k; c++)
        {
            Finite.Require(series[c], nameof(series));
            var centred = RandomizationTest.Centred(series[c], out var spread);
            Spread = Math.Max(Spread, spread);
            Observed += Difference(centred, actual[c]);
            _difference[c] = new double[k][];
            for (var tier = 0; tier < k; tier++)
            {
                _difference[c][tier] = tier == c || orderDrawn
                    ? [.. windows[tier].Select(start => Difference(centred, start))]
                    : [];
            }
        }
    }

    public double Observed { get; }

    public double Spread { get; }

    public double Count(bool orderDrawn)
    {
        var count = orderDrawn ? Choices.Factorial(_windows.Count) : 1;
        foreach (var window in _windows)
            count *= window.Length;
        return count;
    }

    public bool AdmitsActual(bool orderDrawn)
    {
        var used = new bool[_windows.Count];
        return Place(0);

        bool Place(int at)
        {
            if (at == used.Length)
                return true;
            for (var tier = 0; tier < used.Length; tier++)
            {
                if (used[tier] || (!orderDrawn && tier != at) || !_windows[tier].Contains(_actual[at]))
                    continue;
                used[tier] = true;
                if (Place(at + 1))
                    return true;
                used[tier] = false;
            }

            return false;
        }
    }

    public void VisitAll(bool orderDrawn, Action<double> visit)
    {
        var used = new bool[_windows.Count];
        Place(0, 0);

        void Place(int at, double sum)
        {
            if (at == used.Length)
            {
                visit(sum);
                return;
            }

            for (var tier = 0; tier < used.Length; tier++)
            {
                if (used[tier] || (!orderDrawn && tier != at))
                    continue;
                used[tier] = true;
                foreach (var difference in _difference[at][tier])
                    Place(at + 1, sum + difference);
                used[tier] = false;
            }
        }
    }

    public double Draw(int[] tiers, Xoshiro256 stream)
    {
        var sum = 0.0;
        for (var c = 0; c < tiers.Length; c++)
        {
            var candidates = _difference[c][tiers[c]];
            sum += candidates[stream.NextIndex(candidates.Length)];
        }

        return sum;
    }

    private static double Difference(double[] values, int start)
    {
        if (start < 1 || start >= values.Length)
            throw new ArgumentException($"A start lies between 1 and {values.Length - 1}, so that both phases have a value; got {start}.", nameof(start));
        double a = 0, b = 0;
        for (var i = 0; i < values.Length; i++)
        {
            if (i < start)
                a += values[i];
            else
                b += values[i];
        }

        return (b / (values.Length - start)) - (a / start);
    }
}
