namespace SwingStudy.Statistics.Curves;

/// <summary>Finds runs of nodes beyond a mark in the sums of one labelling. Holds no state between calls.</summary>
/// <param name="scale">What turns a sum into the correlation r of node values and labels.</param>
/// <param name="df">Degrees of freedom of t.</param>
/// <param name="forming">|t| beyond which nodes form runs.</param>
internal sealed class ClusterScan(double scale, double df, double forming)
{
    // t grows with r: the mark is compared without a root for every node.
    private readonly double _mark = forming / Math.Sqrt(df + (forming * forming)) / scale;

    /// <summary>Largest |mass| of any run; 0 without a run.</summary>
    public double Heaviest(ReadOnlySpan<double> sums)
    {
        var heaviest = 0.0;
        for (var node = 0; node < sums.Length;)
        {
            var (end, mass) = Next(sums, node);
            heaviest = Math.Max(heaviest, Math.Abs(mass));
            node = end;
        }

        return heaviest;
    }

    /// <summary>Every run, in order.</summary>
    public List<(int From, int To, double Mass)> All(ReadOnlySpan<double> sums)
    {
        var runs = new List<(int, int, double)>();
        for (var node = 0; node < sums.Length;)
        {
            var (end, mass) = Next(sums, node);
            if (mass != 0)
                runs.Add((node, end - 1, mass));
            node = end;
        }

        return runs;
    }

    // The run that begins at the node, or the one node that belongs to none.
    private (int End, double Mass) Next(ReadOnlySpan<double> sums, int node)
    {
        if (Math.Abs(sums[node]) <= _mark)
            return (node + 1, 0);
        var sign = Math.Sign(sums[node]);
        var mass = 0.0;
        while (node < sums.Length && Math.Abs(sums[node]) > _mark && Math.Sign(sums[node]) == sign)
        {
            var r = Math.Abs(sums[node]) * scale;
            mass += r < 1 ? r * Math.Sqrt(df / ((1 - r) * (1 + r))) : double.PositiveInfinity;
            node++;
        }

        return (node, sign * mass);
    }
}
