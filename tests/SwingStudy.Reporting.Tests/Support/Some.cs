using NodaTime;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Protocols;
using SwingStudy.Domain.Tables;
using SwingStudy.Domain.Variables;
using SwingStudy.Reporting.Rows;

namespace SwingStudy.Reporting.Tests.Support;

/// <summary>A small invented study: five players, eight sessions, fixed numbers.</summary>
internal static class Some
{
    private static readonly double[] Wobble = [0.3, -0.6, 0.9, -0.2, 0.1, -0.9, 0.5, 0.0, -0.4, 0.7];
    private static readonly double[] Days = [0.2, -0.3, 0.1, -0.1, 0.3, -0.2, 0.15, 0.0];

    public static readonly VariableDictionary Dictionary = new("test", new Version(1, 0, 0),
    [
        new()
        {
            Name = "club_head_speed", Title = "Club head speed", Description = "d", Type = VariableType.Number, Group = "g", Unit = "m/s", DisplayUnit = "[mi_i]/h",
            Typical = new TypicalRange(28, 54, "b", null), Better = Better.Higher,
        },
        new() { Name = "attention_level", Title = "Attention level", Description = "d", Type = VariableType.Number, Group = "g", Unit = "1", Typical = new TypicalRange(20, 80, "b", null) },
    ], Sha256.Of("dictionary"));

    public static readonly Protocol Protocol = new()
    {
        Name = "hum-a-tune", Version = new Version(1, 0, 0), Title = "Hum a tune", Question = "Does <humming> raise club head speed & is it kept?",
        Design = DesignKind.MultipleBaseline,
        Phases =
        [
            new("baseline", PhaseRole.Baseline, 3, 10, null, null, "Least points."),
            new("cue", PhaseRole.Intervention, 3, 10, 1, "hum a tune", "Least points."),
            new("four-weeks-later", PhaseRole.FollowUp, 1, 10, 28, null, "Learning."),
        ],
        Randomization = new("phase-start", 4, 5, 3),
        Eligibility = new(18, false, 18, []),
        Outcomes =
        [
            new("club_head_speed", OutcomeRole.Primary, new(0.89408, "stated", "Two miles an hour."), []),
            new("attention_level", OutcomeRole.Mechanism, null, []),
        ],
        Contrasts = [new("with-cue", "baseline", "cue"), new("kept", "baseline", "four-weeks-later")],
        Cautions = ["Warm up first."],
        File = "protocol.yaml", Hash = Sha256.Of("protocol"),
    };

    private static readonly (string Code, double Change, double Half, string Verdict)[] Players =
    [
        ("P01", 2.1, 0.7, Verdict.Supported), ("P02", 1.1, 0.9, Verdict.Suggestive), ("P03", 0.1, 0.6, Verdict.NotShown), ("P04", 0.8, 2.3, Verdict.CannotTell),
        ("P05", double.NaN, double.NaN, Verdict.CannotTell),
    ];

    public static StudyReport Report() => new()
    {
        Name = "Humming <study> (invented)",
        Zone = DateTimeZoneProviders.Tzdb["Europe/Dublin"],
        Protocol = Protocol,
        Dictionary = Dictionary,
        Tables = ReportTables.From(["club_head_speed", "attention_level"], [Swings()], [Flags()], [Effects()], [Reliability()], [Findings()], [Links()], [Group()]),
        Methods = [new("honest-change", "One player's change against noise", "Mean of session means after − before.", ["Session effects are independent."], ["Invented A (2001). A source."])],
        Enrolled = 6,
        Withdrawn = 1,
        Intake = new(61, 1, 0, 2, 1893, 1702, 3, 188),
        Versions = [("swings", 4), ("effects", 2), ("findings", 2)],
        LockedAt = Instant.FromUtc(2026, 3, 1, 9, 30),
    };

    public static StudyReport EmptyReport() => Report() with
    {
        Tables = ReportTables.From(["club_head_speed"], [], [], [], [], [], []), Intake = new(0, 0, 0, 0, 0, 0, 0, 0), Versions = [], LockedAt = null,
    };

    private static RowSet Swings()
    {
        var rows = new RowSetBuilder(StudyTables.Swings(Dictionary));
        for (var p = 0; p < 4; p++)
        {
            for (var session = 0; session < 8; session++)
            {
                var phase = session < 3 + (p % 2) ? "baseline" : session < 7 ? "cue" : "four-weeks-later";
                var start = Instant.FromUtc(2026, 3, 2, 9, 0) + Duration.FromDays(session < 7 ? session * 4 : 56) + Duration.FromMinutes(20 * p);
                for (var i = 0; i < 10; i++)
                {
                    var speed = 40 + (2 * p) + Days[(session + p) % 8] + (0.9 * Wobble[(i + session + p) % 10]) + (phase == "baseline" ? 0 : Players[p].Change);
                    var misread = p == 0 && session == 5 && i == 3;
                    rows.Add(
                        ("swing_id", $"{Players[p].Code}-{session}-{i}"), ("participant", Players[p].Code), ("session", $"{Players[p].Code}-s{session}"), ("phase", phase),
                        ("sequence", i + 1), ("struck_at", start + Duration.FromSeconds(40 * i)), ("is_practice", i == 0), ("included", i != 0 && !(session == 1 && i == 4)),
                        ("club_head_speed", misread ? speed * 0.68 : speed), ("attention_level", 55.0 + i));
                }
            }
        }

        return rows.Build();
    }

    private static RowSet Flags()
    {
        var rows = new RowSetBuilder(StudyTables.Flags);
        rows.Add(("swing_id", "P01-5-3"), ("participant", "P01"), ("variable", "club_head_speed"), ("rule", "ratio-limit"), ("action", "exclude-value"), ("detail", "1.98"), ("decided_by", "rule"));
        rows.Add(("swing_id", "P03-2-5"), ("participant", "P03"), ("variable", "club_head_speed"), ("rule", "ratio-limit"), ("action", "exclude-value"), ("detail", "1.57"), ("decided_by", "rule"));
        rows.Add(("swing_id", "P03-2-5"), ("participant", "P03"), ("variable", "club_head_speed"), ("rule", "decision"), ("action", "keep"), ("detail", "seen on video"), ("decided_by", "coach"));
        for (var p = 0; p < 4; p++)
            rows.Add(("swing_id", $"{Players[p].Code}-1-4"), ("participant", Players[p].Code), ("rule", "decision"), ("action", "exclude-swing"), ("detail", "ball fell off"), ("decided_by", "coach"));
        return rows.Build();
    }

    private static RowSet Effects()
    {
        var rows = new RowSetBuilder(StudyTables.Effects);
        foreach (var (code, change, half, _) in Players)
        {
            var known = !double.IsNaN(change);
            rows.Add(
                ("participant", code), ("outcome", "club_head_speed"), ("contrast", "with-cue"), ("measure", "difference"), ("estimate", known ? change : null), ("ci_low", known ? change - half : null),
                ("ci_high", known ? change + half : null), ("p", known ? (code == "P01" ? 0.0004 : 0.2) : null), ("n_from", 28), ("n_to", 36), ("sessions_from", 3), ("sessions_to", 4), ("unit", "m/s"),
                ("method", "honest-change"), ("planned", true), ("undefined", known ? null : "needs swings in both phases"));
        }

        rows.Add(("participant", "P01"), ("outcome", "club_head_speed"), ("contrast", "with-cue"), ("measure", "hedges-g"), ("estimate", 2.3), ("ci_low", 1.4), ("ci_high", 3.2), ("unit", "1"), ("method", "hedges-g-pooled; swings as independent"), ("planned", false));
        return rows.Build();
    }

    private static RowSet Reliability()
    {
        var rows = new RowSetBuilder(StudyTables.Reliability);
        rows.Add(("outcome", "club_head_speed"), ("level", "session mean"), ("coefficient", "typical-error"), ("estimate", 0.35), ("ci_low", 0.25), ("ci_high", 0.55), ("n", 5), ("k", 3), ("unit", "m/s"), ("method", "typical-error"));
        return rows.Build();
    }

    private static RowSet Findings()
    {
        var rows = new RowSetBuilder(StudyTables.Findings);
        rows.Add(("scope", "study"), ("basis", "planned"), ("verdict", Verdict.Suggestive), ("outcome", "club_head_speed"), ("contrast", "with-cue"), ("statement", "Two of five players gained."), ("reasons", "P01: supported\nP02: suggestive"));
        foreach (var (code, _, _, verdict) in Players)
        {
            rows.Add(
                ("scope", "player"), ("participant", code), ("outcome", "club_head_speed"), ("contrast", "with-cue"), ("basis", "planned"), ("verdict", verdict), ("statement", $"{code}: statement about {code} & <speed>."),
                ("reasons", $"within-noise: the interval includes no change\nmoved-in-time: peak force of {code}: 20 ms earlier (supported)\nfew-sessions: 1 session in cue, planned were 3\nnot-randomized: not randomized\nto-settle: measure {code} again"));
        }

        rows.Add(
            ("scope", "player"), ("participant", "P02"), ("outcome", "attention_level"), ("contrast", "kept"), ("basis", "exploratory"), ("verdict", Verdict.Suggestive),
            ("statement", "P02: attention level rose by 3."), ("reasons", "exploratory: the protocol does not plan this comparison"));

        return rows.Build();
    }

    private static RowSet Group()
    {
        var rows = new RowSetBuilder(StudyTables.GroupEffects);
        rows.Add(
            ("outcome", "club_head_speed"), ("contrast", "with-cue"), ("measure", "difference"), ("estimate", 1.0), ("ci_low", -0.2), ("ci_high", 2.2), ("p", 0.08), ("p_adjusted", 0.16), ("tau2", 0.6),
            ("i2", 61.0), ("pi_low", -1.4), ("pi_high", 3.4), ("n", 4), ("unit", "m/s"), ("method", "meta-reml-knapp-hartung; p adjusted: holm over 2"), ("planned", true));
        rows.Add(("outcome", "club_head_speed"), ("contrast", "with-cue"), ("measure", "players-supported"), ("estimate", 1.0), ("n", 3), ("unit", "1"), ("method", "count"), ("planned", true));
        rows.Add(("outcome", "attention_level"), ("contrast", "kept"), ("measure", "difference"), ("n", 1), ("unit", "1"), ("method", "meta-reml-knapp-hartung"), ("planned", false), ("undefined", "needs at least 2 players"));
        return rows.Build();
    }

    private static RowSet Links()
    {
        var rows = new RowSetBuilder(StudyTables.Links);
        for (var i = 0; i < 1600; i++)
            rows.Add(("capture_id", $"c{i}"), ("swing_id", i < 1540 ? $"s{i / 5}" : null), ("participant", "P01"), ("method", i < 320 ? "session" : i < 1540 ? "time" : "missed-or-false"));
        return rows.Build();
    }
}
