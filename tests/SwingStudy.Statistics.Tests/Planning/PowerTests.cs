using SwingStudy.Statistics.Chance;
using SwingStudy.Statistics.Planning;
using SwingStudy.Statistics.Resampling;
using SwingStudy.Statistics.Tests.Support;

namespace SwingStudy.Statistics.Tests.Planning;

public class PowerTests
{
    private static readonly NoiseModel Golf = new() { ChangeBetweenPlayers = 0.6, Session = 0.5, Swing = 0.9, SwingAutocorrelation = 0.2 };

    /// <summary>Cohen (1988), table 2.3.5: d = 0.5, n = 64 a group, two-sided 0.05 gives 0.80 (from memory, rounded).</summary>
    [Fact]
    public void TwoGroupsOf64DetectAMediumEffectFourTimesInFive() => Assert.InRange(PowerClosedForm.TwoSampleT(0.5, 64, 64), 0.795, 0.805);

    [Theory]
    [InlineData(8, 2, 10)]
    [InlineData(5, 3, 1)]
    [InlineData(1, 4, 10)]
    public void SimulatedPrePostPowerMeetsTheClosedForm(int players, int sessions, int swings)
    {
        var size = new StudySize { Players = players, Sessions = sessions, Swings = swings };
        var closed = PrePostPower.ClosedForm(Golf, size, 0.8)!.Value;
        var simulated = PrePostPower.Simulate(Golf, size, 0.8, new Xoshiro256(4), 20_000)!;
        Assert.InRange(simulated.Power, closed - (4 * simulated.MonteCarloError), closed + (4 * simulated.MonteCarloError));
        Assert.InRange(simulated.MeanEstimate, 0.8 - (4 * simulated.StandardErrorOfEstimate / Math.Sqrt(20_000)), 0.8 + (4 * simulated.StandardErrorOfEstimate / Math.Sqrt(20_000)));
        var variance = 2 * Golf.VarianceOfPhaseMean(sessions, swings);
        var expected = players > 1 ? Math.Sqrt(((0.6 * 0.6) + variance) / players) : Math.Sqrt(variance);
        Assert.InRange(simulated.StandardErrorOfEstimate / expected, 0.97, 1.03);
    }

    [Fact]
    public void AutocorrelatedSessionsMakeATTestOfOnePlayerReject()
    {
        // The t test takes sessions as independent: with carry-over it rejects too often without any change, and the simulation shows it.
        var size = new StudySize { Players = 1, Sessions = 6, Swings = 10 };
        var carried = PrePostPower.Simulate(Golf with { SessionAutocorrelation = 0.6 }, size, 0, new Xoshiro256(4), 5000)!;
        Assert.True(carried.Power > 0.09);
        Assert.Throws<ArgumentException>(() => PrePostPower.ClosedForm(Golf with { SessionAutocorrelation = 0.6 }, size, 0));
    }

    [Fact]
    public void TheVarianceOfAMeanOfAutocorrelatedSwingsMeetsAllPairs()
    {
        const int Swings = 7;
        var sum = 0.0;
        for (var i = 0; i < Swings; i++)
        {
            for (var j = 0; j < Swings; j++)
                sum += 0.81 * Math.Pow(0.2, Math.Abs(i - j));
        }

        Near.Equal(sum / (Swings * Swings), Golf.SwingVarianceOfMean(Swings));
        Near.Equal(0.081, (Golf with { SwingAutocorrelation = 0 }).SwingVarianceOfMean(10));
    }

    [Fact]
    public void RandomizationTestsHoldTheirLevelWithoutChangeEvenWithCarryOver()
    {
        var noise = Golf with { SessionAutocorrelation = 0.6, ChangeBetweenPlayers = 0 };
        var withdrawal = RandomizedDesignPower.ByScheme(noise, new PhaseChangeScheme(20, 4, 3), 1, 10, 0, new Xoshiro256(4), 1500);
        Assert.InRange(withdrawal.Power, 0, 0.05 + (4 * Math.Sqrt(0.05 * 0.95 / 1500)));
        var alternating = RandomizedDesignPower.ByScheme(noise, new AlternatingScheme(5, 5, 2), 2, 10, 0, new Xoshiro256(4), 1000);
        Assert.InRange(alternating.Power, 0, 0.05 + (4 * Math.Sqrt(0.05 * 0.95 / 1000)));
        var baseline = RandomizedDesignPower.MultipleBaseline(noise, 16, [[4, 5, 6], [7, 8, 9], [10, 11, 12]], true, 10, 0, new Xoshiro256(4), 1000);
        Assert.InRange(baseline.Power, 0, 0.05 + (4 * Math.Sqrt(0.05 * 0.95 / 1000)));
    }

    [Fact]
    public void ADesignWithFewAssignmentsSaysThatItCannotReachTheLevel()
    {
        // Three players drawn to three fixed starts: six orders, smallest p 1/6.
        var plan = RandomizedDesignPower.MultipleBaseline(Golf, 12, [[3], [6], [9]], true, 10, 50, new Xoshiro256(4), 200);
        Near.Equal(1.0 / 6, plan.SmallestPossibleP);
        Assert.Equal(0, plan.Power);
    }

    [Fact]
    public void ALargeChangeIsFoundByEveryDesign()
    {
        Assert.True(RandomizedDesignPower.ByScheme(Golf, new AlternatingScheme(5, 5, 2), 1, 10, 6, new Xoshiro256(4), 300).Power > 0.9);
        Assert.True(RandomizedDesignPower.ByScheme(Golf, new PhaseChangeScheme(24, 4, 4), 1, 10, 6, new Xoshiro256(4), 300).Power > 0.9);
        Assert.True(RandomizedDesignPower.MultipleBaseline(
            Golf, 16, [[4, 5, 6], [7, 8, 9], [10, 11, 12]], false, 10, 6, new Xoshiro256(4), 300).Power > 0.9);
    }

    [Fact]
    public void ThreadsDoNotChangeASimulation()
    {
        var size = new StudySize { Players = 4, Sessions = 2, Swings = 10 };
        Assert.Equal(
            PrePostPower.Simulate(Golf, size, 1, new Xoshiro256(4), 5000, threads: 1), PrePostPower.Simulate(Golf, size, 1, new Xoshiro256(4), 5000, threads: 2));
        var scheme = new BlockedScheme(5);
        Assert.Equal(
            RandomizedDesignPower.ByScheme(Golf, scheme, 2, 10, 1, new Xoshiro256(4), 2500, threads: 1),
            RandomizedDesignPower.ByScheme(Golf, scheme, 2, 10, 1, new Xoshiro256(4), 2500, threads: 2));
    }

    [Fact]
    public void SessionsNeededAreTheFewestWithThePowerWanted()
    {
        var needed = PrePostPower.SessionsNeeded(Golf, 8, 10, 0.8)!.Value;
        double At(int sessions) => PrePostPower.ClosedForm(Golf, new StudySize { Players = 8, Sessions = sessions, Swings = 10 }, 0.8)!.Value;
        Assert.True(At(needed) >= 0.8);
        Assert.True(needed == 1 || At(needed - 1) < 0.8);

        // What players differ in their true change no number of sessions removes.
        Assert.Null(PrePostPower.SessionsNeeded(Golf with { ChangeBetweenPlayers = 5 }, 8, 10, 0.8));
    }

    [Fact]
    public void ADesignWithoutADegreeOfFreedomIsUndefinedAndWrongNumbersAreRefused()
    {
        var single = new StudySize { Players = 1, Sessions = 1, Swings = 10 };
        Assert.Null(PrePostPower.Simulate(Golf, single, 1, new Xoshiro256(1)));
        Assert.Null(PrePostPower.ClosedForm(Golf, single, 1));
        Assert.Throws<ArgumentException>(() => PrePostPower.Simulate(Golf with { Swing = -1 }, single, 1, new Xoshiro256(1)));
        Assert.Throws<ArgumentException>(() => PrePostPower.Simulate(Golf with { SwingAutocorrelation = 1 }, single, 1, new Xoshiro256(1)));
        Assert.Throws<ArgumentException>(() => PrePostPower.Simulate(Golf, single with { Players = 0 }, 1, new Xoshiro256(1)));
        Assert.Throws<ArgumentException>(() => PowerClosedForm.PairedT(double.NaN, 5));
        Assert.Throws<ArgumentException>(() => PowerClosedForm.PairedT(0.5, 1));
        Assert.Throws<ArgumentException>(() => IccPlan.ForWidth(1, 2, 0.2));
        Assert.Throws<ArgumentException>(() => IccPlan.ForWidth(0.8, 1, 0.2));
    }
}
