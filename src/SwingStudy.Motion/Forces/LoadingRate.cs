using SwingStudy.Motion.Geometry;
using SwingStudy.Motion.Signals;

namespace SwingStudy.Motion.Forces;

/// <summary>How steeply a force rises.</summary>
public static class LoadingRate
{
    /// <summary>Length of the moving line, seconds.</summary>
    public const double LineSeconds = 0.02;

    /// <summary>Greatest slope of a moving least-squares line of 20 ms, in the curve's unit per second; NaN when no whole line fits in.</summary>
    /// <remarks>Depends on the filter, which belongs to the value. Common practice, no source.</remarks>
    /// <param name="values">The force.</param>
    /// <param name="axis">Its times.</param>
    /// <param name="fromS">Start of the search; lines lie inside it.</param>
    /// <param name="toS">Its end.</param>
    public static double Steepest(ReadOnlySpan<double> values, TimeAxis axis, double fromS, double toS)
    {
        var length = Math.Max(3, (int)Math.Round(LineSeconds * axis.SampleRateHz) + 1);
        double[] times = [.. Enumerable.Range(0, length).Select(i => i / axis.SampleRateHz)];
        var steepest = double.NaN;
        for (var from = axis.From(fromS); from + length - 1 <= axis.To(toS); from++)
        {
            var slope = StraightLine.Through(times, values.Slice(from, length)).Slope;
            if (!double.IsNaN(slope) && !(slope <= steepest))
                steepest = slope;
        }

        return steepest;
    }
}
