namespace SwingStudy.FalseClaims;

/// <summary>One truth to simulate studies from: club head speed in m/s, judged with a smallest worthwhile change of <see cref="Worthwhile"/>.</summary>
/// <param name="Name">What it is about.</param>
internal sealed record Scenario(string Name)
{
    /// <summary>Smallest worthwhile change: two miles an hour, as the shipped protocols state it.</summary>
    public const double Worthwhile = 0.89408;

    public int Players { get; init; } = 4;

    public int BaselineSessions { get; init; } = 3;

    public int CueSessions { get; init; } = 3;

    public int LaterSessions { get; init; } = 3;

    public int Swings { get; init; } = 10;

    /// <summary>Standard deviation from day to day.</summary>
    public double SessionDeviation { get; init; } = 0.5;

    /// <summary>Standard deviation from swing to swing.</summary>
    public double SwingDeviation { get; init; } = 0.9;

    /// <summary>Correlation of neighbouring swings.</summary>
    public double SwingDependence { get; init; } = 0.1;

    /// <summary>Correlation of neighbouring days.</summary>
    public double SessionDependence { get; init; }

    /// <summary>Standard deviation of the logarithm of a player's noise: 0 where all players scatter alike.</summary>
    public double NoiseSpread { get; init; }

    /// <summary>Share of swings that are misread by a fifth and that no rule catches.</summary>
    public double Misreads { get; init; }

    /// <summary>Change from session to session that has nothing to do with the cue.</summary>
    public double Trend { get; init; }

    /// <summary>Change from swing to swing within a session.</summary>
    public double Fatigue { get; init; }

    /// <summary>Whether all sessions lie on one day.</summary>
    public bool OneDay { get; init; }

    /// <summary>What another ball adds with the cue; it is written down.</summary>
    public double Ball { get; init; }

    /// <summary>What another device adds with the cue; links say which.</summary>
    public double Device { get; init; }

    /// <summary>Whether the protocol states the smallest worthwhile change; where it does not, noise alone decides.</summary>
    public bool StatesWorthwhile { get; init; } = true;

    /// <summary>Whether an effect must be found in it: three sessions of a phase and realistic noise.</summary>
    public bool MustFind { get; init; }

    /// <summary>All, realistic noise first.</summary>
    public static IReadOnlyList<Scenario> All { get; } =
    [
        new("four players, three sessions of ten swings a phase") { MustFind = true },
        new("one player") { Players = 1, MustFind = true },
        new("two players") { Players = 2, MustFind = true },
        new("twelve players") { Players = 12, MustFind = true },
        new("quiet days (0.2 m/s)") { SessionDeviation = 0.2, MustFind = true },
        new("days as loud as swings (0.9 m/s)") { SessionDeviation = 0.9 },
        new("quiet swings (0.5 m/s)") { SwingDeviation = 0.5, MustFind = true },
        new("loud swings (1.4 m/s)") { SwingDeviation = 1.4, MustFind = true },
        new("five swings a session") { Swings = 5, MustFind = true },
        new("twenty swings a session") { Swings = 20, MustFind = true },
        new("five sessions a phase") { BaselineSessions = 5, CueSessions = 5, MustFind = true },
        new("two sessions a phase") { BaselineSessions = 2, CueSessions = 2, LaterSessions = 2 },
        new("two sessions before, one with the cue, one later") { BaselineSessions = 2, CueSessions = 1, LaterSessions = 1 },
        new("two sessions before, one with the cue, one later; players scatter unequally") { BaselineSessions = 2, CueSessions = 1, LaterSessions = 1, NoiseSpread = 0.5 },
        new("neighbouring swings alike (0.4)") { SwingDependence = 0.4, MustFind = true },
        new("neighbouring days alike (0.3)") { SessionDependence = 0.3, MustFind = true },
        new("players scatter unequally (factor e^±0.5)") { NoiseSpread = 0.5, MustFind = true },
        new("twelve players who scatter unequally") { Players = 12, NoiseSpread = 0.5, MustFind = true },
        new("one swing in fifty misread by a fifth, not caught") { Misreads = 0.02 },
        new("swings fall by 0.05 m/s each (fatigue)") { Fatigue = -0.05, MustFind = true },
        new("players improve by 0.1 m/s a session without any cue") { Trend = 0.1 },
        new("no worthwhile size stated") { StatesWorthwhile = false, MustFind = true },
        new("no worthwhile size stated; one player") { StatesWorthwhile = false, Players = 1 },
        new("no worthwhile size stated; two sessions a phase") { StatesWorthwhile = false, BaselineSessions = 2, CueSessions = 2, LaterSessions = 2 },
        new("no worthwhile size stated; two, one and one session") { StatesWorthwhile = false, BaselineSessions = 2, CueSessions = 1, LaterSessions = 1 },
        new("no worthwhile size stated; two, one and one session, twelve players who scatter unequally")
            { StatesWorthwhile = false, Players = 12, BaselineSessions = 2, CueSessions = 1, LaterSessions = 1, NoiseSpread = 0.5 },
        new("no worthwhile size stated; twelve players who scatter unequally") { StatesWorthwhile = false, Players = 12, NoiseSpread = 0.5 },
        new("no worthwhile size stated; neighbouring swings alike (0.4)") { StatesWorthwhile = false, SwingDependence = 0.4 },
        new("no worthwhile size stated; neighbouring days alike (0.3)") { StatesWorthwhile = false, SessionDependence = 0.3 },
        new("one session a phase, all players") { BaselineSessions = 1, CueSessions = 1, LaterSessions = 1 },
        new("everything on one day") { OneDay = true },
        new("another ball with the cue, worth 1.8 m/s") { Ball = 1.8 },
        new("another device with the cue, off by 1.8 m/s") { Device = 1.8 },
        new("players improve by 0.4 m/s a session without any cue") { Trend = 0.4 },
    ];
}
