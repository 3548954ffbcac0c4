using CsCheck;
using SwingStudy.Motion.Signals;

namespace SwingStudy.Motion.Tests.Signals;

public class PeakTests
{
    private static readonly Gen<double[]> Signals = Gen.Frequency((9, Gen.Int[-5, 5].Select(x => (double)x)), (1, Gen.Const(double.NaN))).Array[1, 30];

    [Fact]
    public void TheLowestIsTheHighestOfTheSignalTurnedOver() => Signals.Sample(signal =>
    {
        var turned = Peak.Highest([.. signal.Select(x => -x)]);
        Assert.Equal(turned is { } peak ? peak with { Sample = -peak.Sample, Value = -peak.Value } : null, Peak.Lowest(signal, 0, signal.Length - 1));
    });

    [Fact]
    public void TheHighestIsTheFirstOfTheLargestSamplesThatAreThere() => Signals.Sample(signal =>
    {
        var present = signal.Where(x => !double.IsNaN(x)).ToList();
        var expected = present.Count == 0 ? (int?)null : Array.IndexOf(signal, present.Max());
        Assert.Equal(expected, Peak.Highest(signal)?.Index);
    });
}
