using CsCheck;
using SwingStudy.Statistics.SingleCase;
using SwingStudy.Statistics.Tests.Support;

namespace SwingStudy.Statistics.Tests.SingleCase;

public class PhaseOverlapTests
{
    [Fact]
    public void AValueOnAMiddleBetweenTwoDecimalsIsATie()
    {
        Assert.NotEqual(0.15, (0.1 / 2) + (0.2 / 2));
        Assert.Equal(0.5, PhaseOverlap.PercentageExceedingMedian([0.1, 0.2], [0.15]).Value);
        Assert.Equal(0.5, PhaseOverlap.PercentageExceedingMedian([-0.1, -0.2], [-0.15], Improvement.Decrease).Value);
        Assert.Equal(1.0, PhaseOverlap.PercentageExceedingMedian([0.1, 0.2], [0.1500001]).Value);
    }

    private static readonly Gen<(double[] A, double[] B)> Phases = Gen.Select(Some.Values(1, 12), Some.Values(1, 12));

    [Fact]
    public void NeitherOrderNorUnitNorOffsetChangesNonOverlap() => Phases.Sample(phases =>
    {
        var plain = Shares(phases.A, phases.B, Improvement.Increase);
        Near.Equal(plain, Shares(Some.Backwards(phases.A), Some.Backwards(phases.B), Improvement.Increase));
        Near.Equal(plain, Shares(Some.Times(phases.A, 1024), Some.Times(phases.B, 1024), Improvement.Increase));
        Near.Equal(plain, Shares(Some.Plus(Some.Times(phases.A, 10), 1e9), Some.Plus(Some.Times(phases.B, 10), 1e9), Improvement.Increase));
    });

    [Fact]
    public void ADecreaseIsAnIncreaseOfValuesWithTheirSignTurned() => Phases.Sample(phases =>
        Near.Equal(Shares(phases.A, phases.B, Improvement.Decrease), Shares(Some.Times(phases.A, -1), Some.Times(phases.B, -1), Improvement.Increase)));

    [Fact]
    public void SwappingPhasesMirrorsNap() => Phases.Sample(phases =>
    {
        var forth = NonOverlapOfAllPairs.Of(phases.A, phases.B);
        var back = NonOverlapOfAllPairs.Of(phases.B, phases.A);
        Near.Equal(1 - forth.Estimate.Value, back.Estimate.Value);
        Near.Equal(1 - forth.Estimate.Interval!.Value.Low, back.Estimate.Interval!.Value.High, 1e-7);
        Near.Equal(forth.Estimate.StandardError, back.Estimate.StandardError);
        Assert.InRange(forth.Estimate.Value!.Value, forth.Estimate.Interval!.Value.Low, forth.Estimate.Interval!.Value.High);
    });

    [Fact]
    public void TauIsTwiceNapMinusOne() => Phases.Sample(phases =>
        Near.Equal((2 * NonOverlapOfAllPairs.Of(phases.A, phases.B).Estimate.Value) - 1, TauU.Of(phases.A, phases.B).AgainstPhase.Value));

    [Fact]
    public void FewestRemovalsAgreeWithTryingEverySubset() => Gen.Select(Some.Values(1, 6), Some.Values(1, 6)).Sample(phases =>
    {
        double[] a = phases.Item1, b = phases.Item2;
        var fewest = int.MaxValue;
        for (var set = 0; set < 1 << (a.Length + b.Length); set++)
        {
            var keptA = a.Where((_, i) => ((set >> i) & 1) == 1).ToArray();
            var keptB = b.Where((_, i) => ((set >> (a.Length + i)) & 1) == 1).ToArray();
            if (keptA.Length == 0 || keptB.Length == 0 || keptA.Max() < keptB.Min())
                fewest = Math.Min(fewest, a.Length + b.Length - keptA.Length - keptB.Length);
        }

        Assert.Equal(fewest, PhaseOverlap.FewestRemovals(a, b));
    }, iter: 60);

    [Fact]
    public void CompleteSeparationKeepsAnIntervalThatSaysHowLittleIsKnown()
    {
        var nap = NonOverlapOfAllPairs.Of([1, 2, 3], [4, 5, 6]);
        Assert.Equal(1, nap.Estimate.Value);
        Assert.Equal(1, nap.Estimate.Interval!.Value.High);
        Assert.InRange(nap.Estimate.Interval!.Value.Low, 0.3, 0.7);
        Assert.Equal(0, nap.NearestRoots!.Value.HalfWidth);
    }

    [Fact]
    public void AnEmptyPhaseIsUndefinedWithItsReason()
    {
        Assert.Contains("got 0 and 2", NonOverlapOfAllPairs.Of([], [1, 2]).Estimate.Undefined, StringComparison.Ordinal);
        Assert.False(PhaseOverlap.PercentageOfNonOverlappingData([1], []).IsDefined);
        Assert.False(PhaseOverlap.PercentageExceedingMedian([], []).IsDefined);
        Assert.False(TauU.Of([], [1]).MinusTrendA.IsDefined);
        Assert.False(BaselineCorrectedTau.Of([1], [2, 3]).Corrected.IsDefined);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void AValueThatIsNoNumberIsRefused(double bad)
    {
        Assert.Throws<ArgumentException>(() => NonOverlapOfAllPairs.Of([1, bad], [2]));
        Assert.Throws<ArgumentException>(() => PhaseOverlap.PercentageExceedingMedian([1], [bad]));
        Assert.Throws<ArgumentException>(() => TauU.Of([bad], [2]));
        Assert.Throws<ArgumentException>(() => BaselineCorrectedTau.Of([1, 2, bad], [2]));
    }

    private static double[] Shares(double[] a, double[] b, Improvement improvement)
    {
        var nap = NonOverlapOfAllPairs.Of(a, b, improvement);
        return
        [
            nap.Estimate.Value!.Value, nap.Estimate.StandardError!.Value, nap.Estimate.Interval!.Value.Low, nap.Estimate.Interval!.Value.High,
            PhaseOverlap.PercentageOfNonOverlappingData(a, b, improvement).Value!.Value, PhaseOverlap.PercentageExceedingMedian(a, b, improvement).Value!.Value,
            PhaseOverlap.PercentageOfAllNonOverlappingData(a, b, improvement).Value!.Value, PhaseOverlap.RobustImprovementRateDifference(a, b, improvement).Value!.Value,
        ];
    }
}
