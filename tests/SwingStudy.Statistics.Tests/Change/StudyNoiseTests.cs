using SwingStudy.Statistics.Change;

namespace SwingStudy.Statistics.Tests.Change;

public class StudyNoiseTests
{
    [Fact]
    public void NoiseIsPooledWithinPlayerAndPhase()
    {
        // By hand: swings ±1 in four sessions of two, σ_e² = 8/4 = 2; session means 1, 3 and 12, 12: MS sessions = 2 · (2 + 0)/2 = 2 = MS swings, σ_s² = 0.
        var noise = Of([[0, 2], [2, 4]], [[11, 13], [11, 13]]);
        Assert.Equal(Math.Sqrt(2), noise.SwingStandardDeviation!.Value, 12);
        Assert.Equal(4, noise.SwingDegreesOfFreedom);
        Assert.Equal(0, noise.SessionStandardDeviation!.Value, 12);
        Assert.Equal(2, noise.SessionDegreesOfFreedom);
        Assert.Equal(0.5, noise.SwingShare, 12);
        Assert.Equal(0, noise.ComponentDegreesOfFreedom!.Value, 12);

        // With means 0 and 4 instead: MS sessions = 2 · 8/2 = 8, σ_s² = (8 − 2)/2 = 3, M = 4; ν of σ_s² = 9/(16/2 + 1/4).
        var scattered = Of([[-1, 1], [3, 5]], [[11, 13], [11, 13]]);
        Assert.Equal(Math.Sqrt(3), scattered.SessionStandardDeviation!.Value, 12);
        Assert.Equal(4, scattered.MeanSquare!.Value, 12);
        Assert.Equal(9 / 8.25, scattered.ComponentDegreesOfFreedom!.Value, 12);
    }

    [Fact]
    public void WhatNobodyRepeatedStaysUnknown()
    {
        var noise = Of([[1]], [[2]]);
        Assert.Null(noise.SessionStandardDeviation);
        Assert.Null(noise.SwingStandardDeviation);
        Assert.Null(noise.ComponentDegreesOfFreedom);
        Assert.Null(noise.Lag1);
    }

    [Fact]
    public void APhaseOrSessionWithoutValuesCountsForNothing() => Assert.Equal(NoiseSums.OfPhase([[1, 2]]), NoiseSums.OfPhase([[], [1, 2]]) + NoiseSums.OfPhase([]));

    [Fact]
    public void AShareOfSwingsNeedsASwingVariance() =>
        Assert.Throws<ArgumentException>(() => new StudyNoise { SessionStandardDeviation = 1, SessionDegreesOfFreedom = 3, SwingShare = 0.1 }.Validate());

    private static StudyNoise Of(params double[][][] phases) => StudyNoise.Of(phases.Aggregate(NoiseSums.None, (sums, phase) => sums + NoiseSums.OfPhase(phase)));
}
