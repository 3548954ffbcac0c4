namespace SwingStudy.Statistics.Tests.Support;

/// <summary>Equality of computed numbers up to rounding.</summary>
internal static class Near
{
    public static void Equal(double? expected, double? actual, double tolerance = 1e-9)
    {
        Assert.Equal(expected.HasValue, actual.HasValue);
        if (expected is { } e && actual is { } a)
            Assert.True(Math.Abs(e - a) <= tolerance * Math.Max(1, Math.Abs(e)), $"expected {e:R}, got {a:R}");
    }

    public static void Equal(IEnumerable<double> expected, IEnumerable<double> actual, double tolerance = 1e-9)
    {
        double[] left = [.. expected], right = [.. actual];
        Assert.Equal(left.Length, right.Length);
        for (var i = 0; i < left.Length; i++)
            Equal(left[i], right[i], tolerance);
    }
}
