using NodaTime;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Motion.Tests.Support;
using SwingStudy.Pipeline.Tests.Support;
using SwingStudy.Storage.Registry;

namespace SwingStudy.Pipeline.Tests.Link;

/// <summary>Days of four stays of ten swings in ten minutes; the plates' triggers waver by 3 ms.</summary>
public sealed class DayDriftsTests
{
    private const int Swings = 10;

    [Fact]
    public void OneQuartzRunsAlikeInAllStaysOfADay()
    {
        var (alone, together) = (0.0, 0.0);
        for (var day = 0; day < 12; day++)
        {
            var drifts = Drifts([51, 51, 51, 51], day);
            together += drifts.Sum(drift => Math.Pow(drift + 51, 2)) / (12 * 4);
            alone += Math.Pow(Drifts([51], day)[0] + 51, 2) / 12;
        }

        // A stay's own error is 3 ms over the spread of its swings, 5.4 parts in a million; four stays halve it.
        Assert.InRange(Math.Sqrt(alone), 3, 9);
        Assert.InRange(Math.Sqrt(together), 0, 0.75 * Math.Sqrt(alone));
    }

    [Fact]
    public void TwoDevicesOfOneNameKeepTheirOwnDrifts()
    {
        for (var day = 0; day < 6; day++)
        {
            var drifts = Drifts([70, -70, 70, -70], day);
            Assert.All([(0, -70), (1, 70), (2, -70), (3, 70)], pair => Assert.Equal(pair.Item2, drifts[pair.Item1], 20.0));
        }
    }

    [Fact]
    public void AStayOfTwoSwingsMoreThanNothingTakesTheDriftOfTheOthers()
    {
        // Four swings within twenty seconds know no drift.
        var drifts = Drifts([51, 51, 51], 3, lastSwings: 4, lastSeconds: 5);
        Assert.Equal(-51, drifts[2], 8.0);
    }

    /// <summary>Fitted drifts of the plates against the markers in each stay, millionths.</summary>
    private static double[] Drifts(double[] truePpm, int day, int lastSwings = Swings, double lastSeconds = 61)
    {
        var noise = new Noise(300 + day);
        var (rows, sessions) = (new List<CaptureRow>(), new List<SessionRecord>());
        for (var stay = 0; stay < truePpm.Length; stay++)
        {
            var player = $"P0{stay + 1}";
            var (swings, apart) = stay == truePpm.Length - 1 ? (lastSwings, lastSeconds) : (Swings, 61);
            double[] impacts = [.. Enumerable.Range(0, swings).Select(i => (1800 * stay) + (apart * i) + (0.2 * apart * noise.Next()))];
            sessions.Add(new SessionRecord
            {
                Id = $"{player}-20260907-1",
                Participant = new ParticipantId(player),
                StartedAt = Some.Morning + Duration.FromSeconds(1800 * stay) - Duration.FromSeconds(30),
                StartedLocal = new LocalDateTime(2026, 9, 7, 10, 0),
            });
            rows.AddRange(Recorded("markers", player, impacts));
            rows.AddRange(Recorded("plates", player, [.. impacts.Select(time => time + (0.7 * stay) + 3.1 + (truePpm[stay] * 1e-6 * time) + (0.003 * noise.Next()))]));
        }

        var clocks = Body.RunDay("link", "clocks", [Some.Captures([.. rows])], [.. sessions]);
        var (sources, participants, drifts) = (clocks.Texts("source"), clocks.Texts("participant"), clocks.Numbers("drift_ppm"));
        return [.. sessions.Select(session => drifts[Enumerable.Range(0, clocks.Count).Single(row => participants[row] == session.Participant.ToString() && sources[row] == "plates")])];
    }

    private static IEnumerable<CaptureRow> Recorded(string source, string player, double[] impacts) => CaptureRow.At(source, impacts)
        .Select((row, i) => row with { Participant = player, Original = $"{source}-{player}", Recorded = row.Struck - Duration.FromMilliseconds(1280 + (i * (source == "plates" ? 11 : 7))) });
}
