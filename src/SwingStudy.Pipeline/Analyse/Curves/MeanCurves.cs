namespace SwingStudy.Pipeline.Analyse.Curves;

/// <summary>Means of curves and their scatter, point by point.</summary>
internal static class MeanCurves
{
    /// <summary>The mean curve of a session.</summary>
    public static double[] Of(IReadOnlyList<double[]> curves)
    {
        var mean = new double[curves[0].Length];
        for (var point = 0; point < mean.Length; point++)
        {
            foreach (var curve in curves)
                mean[point] += curve[point] / curves.Count;
        }

        return mean;
    }

    /// <summary>Standard deviation from swing to swing within sessions; null where no session has two swings.</summary>
    public static double[]? DeviationWithin(IReadOnlyList<IReadOnlyList<double[]>> sessions)
    {
        var df = sessions.Sum(session => session.Count - 1);
        if (df < 1)
            return null;
        var squares = new double[sessions[0][0].Length];
        foreach (var session in sessions)
        {
            var mean = Of(session);
            foreach (var curve in session)
            {
                for (var point = 0; point < squares.Length; point++)
                    squares[point] += (curve[point] - mean[point]) * (curve[point] - mean[point]);
            }
        }

        return Array.ConvertAll(squares, square => Math.Sqrt(square / df));
    }
}
