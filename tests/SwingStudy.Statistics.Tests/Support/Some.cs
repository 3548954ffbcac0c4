using CsCheck;

namespace SwingStudy.Statistics.Tests.Support;

/// <summary>Made-up data for properties.</summary>
internal static class Some
{
    /// <summary>Whole eighths, so that ties occur and stay ties: another unit, offset or a median of two rounds none of them.</summary>
    public static Gen<double[]> Values(int least, int most) => Gen.Int[0, 60].Select(i => i / 8.0).Array[least, most];

    /// <summary>Values without ties but for rare ones.</summary>
    public static Gen<double[]> Distinct(int least, int most) => Gen.Double[-10, 10].Array[least, most];

    public static double[] Times(double[] values, double factor) => [.. values.Select(x => x * factor)];

    public static double[] Plus(double[] values, double offset) => [.. values.Select(x => x + offset)];

    public static double[] Backwards(double[] values) => [.. values.Reverse()];
}
