using SwingStudy.Motion.Geometry;
using SwingStudy.Motion.Signals;

namespace SwingStudy.Pipeline.Measure.Curves;

/// <summary>Peaks as measures state them.</summary>
internal static class At
{
    /// <summary>The highest sample between two times; null where one is missing there or the recording does not cover both: a peak may lie in what was lost.</summary>
    public static Peak? Highest(double[] values, TimeAxis axis, double fromS, double toS) => IsWhole(values, axis, fromS, toS) ? Span.Highest(values, axis, fromS, toS) : null;

    /// <summary>The lowest sample between two times; null where one is missing there.</summary>
    public static Peak? Lowest(double[] values, TimeAxis axis, double fromS, double toS) => IsWhole(values, axis, fromS, toS) ? Span.Lowest(values, axis, fromS, toS) : null;

    /// <summary>The sample largest in size, with its sign; null where one is missing there.</summary>
    public static Peak? Largest(double[] values, TimeAxis axis, double fromS, double toS) => IsWhole(values, axis, fromS, toS) ? Span.Largest(values, axis, fromS, toS) : null;

    /// <summary>Height of a peak; NaN without one.</summary>
    public static double Height(Peak? peak) => peak?.Value ?? double.NaN;

    /// <summary>Time of a peak in milliseconds from impact; NaN without one.</summary>
    public static double Milliseconds(Peak? peak, TimeAxis axis) => peak is { } found ? 1000 * axis.TimeOf(found.Position) : double.NaN;

    private static bool IsWhole(double[] values, TimeAxis axis, double fromS, double toS)
    {
        var (first, last) = (axis.From(fromS), axis.To(toS));
        var isWhole = first <= last && axis.Covers(fromS) && axis.Covers(toS);
        for (var i = first; isWhole && i <= last; i++)
            isWhole = !double.IsNaN(values[i]);
        return isWhole;
    }
}
