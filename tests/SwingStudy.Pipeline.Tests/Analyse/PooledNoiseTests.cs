using SwingStudy.Pipeline.Analyse;
using SwingStudy.Pipeline.Tests.Support;
using SwingStudy.Statistics.Change;
using SwingStudy.Statistics.Reliability;

namespace SwingStudy.Pipeline.Tests.Analyse;

public sealed class PooledNoiseTests
{
    [Fact]
    public void SumsOverPlayersGiveTheNestedAnalysisOfVariance()
    {
        PlayedSwing[] swings = [.. Players.Others(), .. PlayedSwing.Of("P06-1", "baseline", "club_head_speed", 41, 42, 40), .. PlayedSwing.Of("P06-2", "baseline", "club_head_speed", 45, 44)];
        var sum = PooledNoise.Sum(Players.Noise(swings), "club_head_speed", without: null);
        var phases = swings.Select(swing => swing.Participant + swing.Phase).Distinct().ToList();
        var sessions = swings.Select(swing => swing.Session).Distinct().ToList();

        // The same table by the library's own nested analysis, phases of players as subjects.
        var anova = NestedAnova.Of(
            [.. swings.Select(swing => (double)swing.Values["club_head_speed"]!)],
            [.. swings.Select(swing => phases.IndexOf(swing.Participant + swing.Phase))],
            [.. swings.Select(swing => sessions.IndexOf(swing.Session))])!;

        var noise = StudyNoise.Of(sum);
        Assert.Equal(anova.TrialVariance!.Value, noise.SwingStandardDeviation!.Value * noise.SwingStandardDeviation.Value, 9);
        Assert.Equal(anova.SessionVariance!.Value, noise.SessionStandardDeviation!.Value * noise.SessionStandardDeviation.Value, 9);
        Assert.Equal(anova.DegreesOfFreedom.Trial, noise.SwingDegreesOfFreedom);
    }

    [Fact]
    public void APlayersOwnSessionsAreLeftOut()
    {
        PlayedSwing[] own = [.. Players.Of("P01", [30, 50], [30, 50])];
        var noise = Players.Noise([.. own, .. Players.Others()]);
        Assert.Equal(PooledNoise.Sum(Players.Noise(Players.Others()), "club_head_speed", null), PooledNoise.Sum(noise, "club_head_speed", "P01"));
    }

    [Fact]
    public void WithoutASecondSessionTheSessionVarianceIsUnknown()
    {
        var noise = StudyNoise.Of(PooledNoise.Sum(Players.Noise(Players.Of("P01", [40], [42])), "club_head_speed", null));
        Assert.Null(noise.SessionStandardDeviation);
        Assert.NotNull(noise.SwingStandardDeviation);
    }
}
