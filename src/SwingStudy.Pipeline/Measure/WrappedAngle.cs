namespace SwingStudy.Pipeline.Measure;

/// <summary>Differences of directions.</summary>
internal static class WrappedAngle
{
    /// <summary>The same direction in (−180, 180] degrees.</summary>
    public static double Of(double degrees)
    {
        var wrapped = degrees % 360;
        return wrapped > 180 ? wrapped - 360 : wrapped <= -180 ? wrapped + 360 : wrapped;
    }
}
