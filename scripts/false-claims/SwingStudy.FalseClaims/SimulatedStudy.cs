using NodaTime;
using SwingStudy.Domain.Tables;
using SwingStudy.Statistics.Chance;

namespace SwingStudy.FalseClaims;

/// <summary>Draws the tables of one study: swings, and which device recorded each.</summary>
internal sealed class SimulatedStudy(Scenario scenario, Xoshiro256 chance, double effect)
{
    private static readonly Instant Start = Instant.FromUtc(2026, 3, 2, 9, 0);
    private readonly NormalStream _normal = new(chance);

    /// <summary>The tables that the analysis reads.</summary>
    public (RowSet Swings, RowSet Captures, RowSet Links) Draw()
    {
        var swings = new RowSetBuilder(StudyTables.Swings(Declared.Dictionary));
        var captures = new RowSetBuilder(StudyTables.Captures(Declared.Dictionary));
        var links = new RowSetBuilder(StudyTables.Links);
        for (var p = 1; p <= scenario.Players; p++)
            AddPlayer($"P{p:00}", swings, captures, links);
        return (swings.Build(), captures.Build(), links.Build());
    }

    private void AddPlayer(string participant, RowSetBuilder swings, RowSetBuilder captures, RowSetBuilder links)
    {
        var level = 40 + (2 * _normal.Next());
        var noise = Math.Exp(scenario.NoiseSpread * _normal.Next());
        var day = _normal.Next();
        string[] phases =
        [
            .. Enumerable.Repeat("baseline", scenario.BaselineSessions), .. Enumerable.Repeat("cue", scenario.CueSessions), .. Enumerable.Repeat("later", scenario.LaterSessions),
        ];
        for (var s = 0; s < phases.Length; s++)
        {
            if (s > 0)
                day = (scenario.SessionDependence * day) + (Math.Sqrt(1 - (scenario.SessionDependence * scenario.SessionDependence)) * _normal.Next());
            var withCue = phases[s] == "cue";
            var mean = level + (noise * scenario.SessionDeviation * day) + (scenario.Trend * s) + (phases[s] == "baseline" ? 0 : effect) + (withCue ? scenario.Ball + scenario.Device : 0);
            var started = Start + (scenario.OneDay ? Duration.FromMinutes(40 * s) : Duration.FromDays(4 * s));
            AddSession(participant, s, phases[s], mean, noise * scenario.SwingDeviation, started, swings, captures, links);
        }
    }

    private void AddSession(
        string participant, int session, string phase, double mean, double deviation, Instant started, RowSetBuilder swings, RowSetBuilder captures, RowSetBuilder links)
    {
        var scatter = _normal.Next();
        for (var k = 1; k <= scenario.Swings; k++)
        {
            if (k > 1)
                scatter = (scenario.SwingDependence * scatter) + (Math.Sqrt(1 - (scenario.SwingDependence * scenario.SwingDependence)) * _normal.Next());
            var speed = mean + (deviation * scatter) + (scenario.Fatigue * (k - 1));
            if (scenario.Misreads > 0 && chance.NextUnit() < scenario.Misreads)
                speed *= 0.8;
            var id = $"{participant}-{session}-{k:00}";
            var device = scenario.Device != 0 && phase == "cue" ? "hall" : "bay";
            swings.Add(
                ("swing_id", id), ("participant", participant), ("session", $"{participant}-{session}"), ("phase", phase), ("sequence", k),
                ("struck_at", started + Duration.FromSeconds(30 * k)), ("club", "iron"), ("ball", scenario.Ball != 0 && phase == "cue" ? "premium" : "range"), ("surface", "mat"),
                ("is_practice", false), ("included", true), ("club_head_speed", speed));
            captures.Add(("capture_id", id), ("source", device), ("device", device), ("participant", participant), ("club_head_speed", speed));
            links.Add(("capture_id", id), ("swing_id", id), ("participant", participant), ("method", "time"), ("source", device), ("device", device));
        }
    }
}
