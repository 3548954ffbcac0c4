namespace SwingStudy.Statistics.Curves;

/// <summary>Curves with unit sum of squares at every node that varies, zero at the others.</summary>
internal sealed class StandardCurves
{
    private readonly bool[] _varies;

    /// <summary>Standardizes copies of the curves.</summary>
    /// <param name="curves">At least one curve.</param>
    /// <param name="nodes">Nodes of a curve.</param>
    /// <param name="centre">Whether the mean over curves is taken off first.</param>
    /// <exception cref="ArgumentException">The spread of the curves at a node is beyond the range of numbers.</exception>
    public StandardCurves(double[][] curves, int nodes, bool centre)
    {
        Nodes = nodes;
        _varies = new bool[nodes];
        Rows = new double[curves.Length][];
        for (var i = 0; i < curves.Length; i++)
            Rows[i] = (double[])curves[i].Clone();
        var mean = new double[nodes];
        if (centre)
        {
            // Deviations from the first curve: a common offset would cost digits.
            for (var i = Rows.Length - 1; i >= 0; i--)
            {
                for (var node = 0; node < nodes; node++)
                    mean[node] += (Rows[i][node] -= Rows[0][node]) / Rows.Length;
            }
        }

        var scale = new double[nodes];
        foreach (var row in Rows)
        {
            for (var node = 0; node < nodes; node++)
                scale[node] = Math.Max(scale[node], Math.Abs(row[node] -= mean[node]));
        }

        var squares = new double[nodes];
        foreach (var row in Rows)
        {
            for (var node = 0; node < nodes; node++)
            {
                var relative = scale[node] > 0 ? row[node] / scale[node] : 0;
                squares[node] += relative * relative;
            }
        }

        for (var node = 0; node < nodes; node++)
        {
            if (!double.IsFinite(scale[node]))
                throw new ArgumentException($"The spread of the curves at node {node + 1} is beyond the range of numbers.", nameof(curves));
            _varies[node] = scale[node] > 0;
            squares[node] = Math.Sqrt(squares[node]);
        }

        foreach (var row in Rows)
        {
            for (var node = 0; node < nodes; node++)
                row[node] = _varies[node] ? row[node] / scale[node] / squares[node] : 0;
        }
    }

    public int Nodes { get; }

    public double[][] Rows { get; }

    public bool AnyVaries => _varies.Contains(true);

    public bool Varies(int node) => _varies[node];
}
