using NodaTime;
using SwingStudy.Statistics.Chance;

namespace SwingStudy.App.Demo;

/// <summary>Draws the demo's swings: each is the one that the player means in the phase, changed by the day and by the swing; swings are serially dependent.</summary>
internal static class DemoSimulation
{
    /// <summary>First-order serial dependence of swings within a day.</summary>
    public const double SerialDependence = 0.2;

    private const int MinutesPerStay = 15;

    /// <summary>Standard deviation of when the vertical force comes between days, and between swings of one day, s.</summary>
    private const double PushTimeOfDay = 0.003;
    private const double PushTimeOfSwing = 0.006;

    /// <summary>Standard deviation of its peak between days, and between swings of one day, in body weights.</summary>
    private const double PushSizeOfDay = 0.015;
    private const double PushSizeOfSwing = 0.03;

    /// <summary>Sessions before the follow-up, the same for all players: the cue starts at a drawn one.</summary>
    public const int SessionsBeforeFollowUp = 8;

    private static readonly LocalDate[] Days =
    [
        new(2026, 3, 2), new(2026, 3, 5), new(2026, 3, 9), new(2026, 3, 12), new(2026, 3, 16), new(2026, 3, 19), new(2026, 3, 23), new(2026, 3, 26),
        new(2026, 4, 23), new(2026, 4, 27),
    ];

    /// <summary>Days on which two pairs of players take turns.</summary>
    private static readonly int[] PairedDays = [1, 5];

    /// <summary>Draws where each player's cue starts, independently between the fourth and the sixth session.</summary>
    public static IReadOnlyList<PlantedPlayer> WithDrawnStarts(IReadOnlyList<PlantedPlayer> players, ulong seed)
    {
        var chance = new Xoshiro256(seed);
        return
        [
            .. players.Select(player =>
            {
                var baseline = 3 + chance.Split($"{player.Code}/phase-start").NextIndex(3);
                return player with { BaselineSessions = baseline, CueSessions = SessionsBeforeFollowUp - baseline };
            }),
        ];
    }

    /// <summary>All stays in order of time.</summary>
    public static IReadOnlyList<DemoStay> Draw(IReadOnlyList<PlantedPlayer> players, ulong seed)
    {
        var chance = new Xoshiro256(seed);
        var stays = new List<DemoStay>();
        for (var day = 0; day < Days.Length; day++)
        {
            var clock = Days[day] + new LocalTime(9, 0);
            foreach (var group in Groups(players, day))
            {
                stays.Add(new([.. group.Select((player, turn) => DrawSession(player, day, clock, turn, group.Count, chance.Split($"{player.Code}/{day}")))]));
                clock = clock.PlusMinutes(MinutesPerStay * group.Count);
            }
        }

        return stays;
    }

    private static IEnumerable<IReadOnlyList<PlantedPlayer>> Groups(IReadOnlyList<PlantedPlayer> players, int day)
    {
        var present = players.Where(player => day < SessionsBeforeFollowUp + player.FollowUpSessions).ToList();
        for (var i = 0; i < present.Count; i++)
        {
            if (PairedDays.Contains(day) && i % 4 == 2 && i + 1 < present.Count)
                yield return [present[i], present[++i]];
            else
                yield return [present[i]];
        }
    }

    private static DemoSession DrawSession(PlantedPlayer player, int day, LocalDateTime start, int turn, int turns, Xoshiro256 chance)
    {
        var phase = day < player.BaselineSessions ? DemoStudy.Baseline : day < SessionsBeforeFollowUp ? DemoStudy.Cue : DemoStudy.FollowUp;
        var ball = player.BallChanges && phase != DemoStudy.Baseline ? DemoStudy.OtherBall : DemoStudy.UsualBall;
        var ofDay = player.SessionDeviation * chance.Normal();
        return new(
            player,
            day + 1,
            phase,
            start,
            ball,
            Math.Round(13 + (0.6 * day) + chance.Normal(), 1),
            chance.Between(52, 62) + (phase == DemoStudy.Cue ? 5 : 0),
            phase == DemoStudy.Cue ? 6 + chance.NextIndex(4) : null,
            [.. DrawSwings(player, phase, ofDay, ball, start, turn, turns, chance)]);
    }

    private static IEnumerable<DemoSwing> DrawSwings(
        PlantedPlayer player, string phase, double ofDay, string ball, LocalDateTime start, int turn, int turns, Xoshiro256 chance)
    {
        var counted = 10 + chance.NextIndex(2);
        var practice = 1 + chance.NextIndex(2);
        var clock = DemoStudy.Zone.AtStrictly(start).ToInstant() + Duration.FromSeconds(100 + (22 * turn));
        var deviation = chance.Normal();
        var movement = chance.Split("movement");
        var (pushTime, pushSize) = (PushTimeOfDay * movement.Normal(), PushSizeOfDay * movement.Normal());
        var speed = player.MeanIn("club_head_speed", phase);
        for (var i = 0; i < practice + counted; i++)
        {
            deviation = (SerialDependence * deviation) + (Math.Sqrt(1 - (SerialDependence * SerialDependence)) * chance.Normal());
            var isPractice = i < practice;
            var misread = chance.NextUnit() switch
            {
                < 0.02 when !isPractice => Misread.BallDoubled,
                < 0.035 when !isPractice => Misread.ClubLow,
                _ => Misread.None,
            };
            var faster = (ofDay + (player.SwingDeviation * deviation) - (isPractice ? 3 : 0)) / speed;
            var scatter = new SwingScatter(faster, pushTime + (PushTimeOfSwing * movement.Normal()), pushSize + (PushSizeOfSwing * movement.Normal()));
            yield return new(
                clock,
                isPractice,
                player.StyleIn(phase, scatter),
                scatter,
                1.44 + (0.015 * chance.Normal()) + (ball == DemoStudy.OtherBall ? 0.03 : 0),
                12.5 + (2 * chance.Normal()),
                2.2 * chance.Normal(),
                2700 + (300 * chance.Normal()),
                1 + (1.2 * chance.Normal()),
                misread,
                0.15 * chance.Normal(),
                -0.4 + (0.25 * chance.Normal()),
                !isPractice && chance.Happens(0.03),
                chance.Happens(0.04));
            clock += Duration.FromMilliseconds((long)(1000 * (turns * chance.Between(27, 48) + (i == 6 ? 60 : 0))));
        }
    }
}
