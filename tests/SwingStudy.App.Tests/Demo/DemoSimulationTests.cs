using SwingStudy.App.Demo;

namespace SwingStudy.App.Tests.Demo;

public class DemoSimulationTests
{
    private static readonly IReadOnlyList<PlantedPlayer> Players = DemoStudy.PlayersWithStarts;

    [Fact]
    public void StartsAreStaggeredFromTheFourthToTheSixthSession()
    {
        Assert.Equal([3, 4, 5], Players.Select(player => player.BaselineSessions).Distinct().Order());
        Assert.All(Players, player => Assert.Equal(DemoSimulation.SessionsBeforeFollowUp, player.BaselineSessions + player.CueSessions));
    }

    [Fact]
    public void TheMeanChangeOverManySpringsIsTheOnePlanted()
    {
        const int Springs = 10;
        var sums = Players.ToDictionary(player => player.Code, _ => (Cue: 0.0, Later: 0.0));
        for (ulong seed = 1; seed <= Springs; seed++)
        {
            foreach (var sessions in DemoSimulation.Draw(Players, seed).SelectMany(stay => stay.Sessions).GroupBy(session => session.Player))
            {
                var baseline = MeanOf(sessions, DemoStudy.Baseline);
                var sum = sums[sessions.Key.Code];
                sums[sessions.Key.Code] = (sum.Cue + MeanOf(sessions, DemoStudy.Cue) - baseline, sum.Later + MeanOf(sessions, DemoStudy.FollowUp) - baseline);
            }
        }

        // Five standard errors of a mean of 10 changes, from the planted deviations of days and swings (10 swings a session at least).
        Assert.All(Players, player =>
        {
            var session = (player.SessionDeviation * player.SessionDeviation) + (player.SwingDeviation * player.SwingDeviation * 1.5 / 10);
            double Allowed(int after) => 5 * Math.Sqrt(session * ((1.0 / player.BaselineSessions) + (1.0 / after)) / Springs);
            var (cue, later) = sums[player.Code];
            Assert.Equal(player.Effect, cue / Springs, Allowed(player.CueSessions));
            Assert.Equal(player.EffectIn("club_head_speed", DemoStudy.FollowUp), later / Springs, Allowed(player.FollowUpSessions));
        });
    }

    [Fact]
    public void SwingsOfADayAreSeriallyDependentAsPlanted()
    {
        double near = 0, far = 0;
        for (ulong seed = 1; seed <= 100; seed++)
        {
            foreach (var session in DemoSimulation.Draw(Players, seed).SelectMany(stay => stay.Sessions))
            {
                // Differences between swings do not depend on the level of the day.
                var speeds = session.Swings.Where(swing => !swing.IsPractice).Select(swing => swing.Scatter.Faster * session.Player.MeanIn("club_head_speed", session.Phase)).ToArray();
                for (var i = 0; i + 3 < speeds.Length; i++)
                {
                    near += (speeds[i + 1] - speeds[i]) * (speeds[i + 1] - speeds[i]);
                    far += (speeds[i + 3] - speeds[i]) * (speeds[i + 3] - speeds[i]);
                }
            }
        }

        // E(y(t+1) - y(t))² = 2σ²(1 - ρ) and E(y(t+3) - y(t))² = 2σ²(1 - ρ³) for a first-order process.
        const double Rho = DemoSimulation.SerialDependence;
        Assert.Equal((1 - Rho) / (1 - (Rho * Rho * Rho)), near / far, 0.02);
    }

    [Fact]
    public void SpeedsArePlausibleForADriver()
    {
        var swings = DemoSimulation.Draw(Players, DemoStudy.DefaultSeed).SelectMany(stay => stay.Sessions).SelectMany(session => session.Swings)
            .Where(swing => !swing.IsPractice).ToList();

        Assert.All(swings, swing =>
        {
            Assert.InRange(swing.ClubSpeed, 32, 52);
            Assert.InRange(swing.SpeedRatio, 1.36, 1.53);
            Assert.InRange(swing.Carry, 100, 290);
            Assert.InRange(swing.Spin, 1500, 4200);
        });
    }

    [Fact]
    public void OnePlayersBallChangesOnTheDayTheCueStarts()
    {
        var sessions = DemoSimulation.Draw(Players, DemoStudy.DefaultSeed).SelectMany(stay => stay.Sessions).ToList();

        Assert.Equal(["P06"], sessions.Where(session => session.Ball == DemoStudy.OtherBall).Select(session => session.Player.Code).Distinct());
        Assert.All(sessions.Where(session => session.Player.Code == "P06"), session =>
            Assert.Equal(session.Phase == DemoStudy.Baseline, session.Ball == DemoStudy.UsualBall));
    }

    [Fact]
    public void SessionsOfADayDoNotOverlapUnlessPlayersTakeTurns()
    {
        var stays = DemoSimulation.Draw(Players, DemoStudy.DefaultSeed);
        var bounds = stays.Select(stay => (
            First: stay.Sessions.Min(session => session.Swings[0].StruckAt), Last: stay.Sessions.Max(session => session.Swings[^1].StruckAt))).ToList();

        Assert.All(bounds.Zip(bounds.Skip(1)), pair => Assert.True(pair.First.Last < pair.Second.First));
        Assert.Equal(4, stays.Count(stay => stay.Sessions.Count == 2));
    }

    private static double MeanOf(IEnumerable<DemoSession> sessions, string phase) => sessions.Where(session => session.Phase == phase)
        .Average(session => session.Swings.Where(swing => !swing.IsPractice).Average(swing => swing.ClubSpeed));
}
