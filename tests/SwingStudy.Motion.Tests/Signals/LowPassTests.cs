using CsCheck;
using SwingStudy.Motion.Geometry;
using SwingStudy.Motion.Signals;

namespace SwingStudy.Motion.Tests.Signals;

public class LowPassTests
{
    private static readonly Gen<LowPass> Filters =
        from order in Gen.Int[1, 5]
        from cutoff in Gen.Double[5, 90]
        from correction in Gen.OneOf(PassCorrection.BothPasses, PassCorrection.EachPass)
        select new LowPass(cutoff, order, correction);

    /// <summary>As many signals as go side by side, fewer, and some more.</summary>
    private static readonly Gen<double[][]> Signals =
        from count in Gen.Int[0, 26]
        from length in Gen.Int[1, 200]
        from signals in Gen.Double[-1000, 1000].Array[length].Array[count]
        select signals;

    [Fact]
    public void SignalsFilteredTogetherAreTheSameToTheLastBit() => Gen.Select(Filters, Signals).Sample((filter, signals) =>
        Assert.Equal(signals.Select(signal => filter.Apply(signal, 200)), filter.Apply(signals, 200)), iter: 500);

    [Fact]
    public void StretchesAreFilteredAloneAndShortOnesBecomeMissing() => Gen.Select(Filters, Signals, Gen.Int[0, 200].Array[0, 4], Gen.Bool).Sample((filter, signals, gaps, areAlike) =>
    {
        for (var i = 0; i < signals.Length; i++)
        {
            foreach (var gap in gaps.Where(gap => areAlike || gap % signals.Length == i))
                signals[i].AsSpan(Math.Min(gap, signals[i].Length - 1), 1).Fill(double.NaN);
        }

        var expected = signals.Select(signal => Span.EachStretch(signal, 4, part => filter.Apply(part, 200)));
        Assert.Equal(expected, filter.ApplyToStretches(signals, 200));
    }, iter: 500);

    [Fact]
    public void SignalsOfUnequalLengthAreNotFilteredTogether() =>
        Assert.Throws<ArgumentException>(() => new LowPass(10).Apply((double[][])[new double[20], new double[21]], 200));
}
