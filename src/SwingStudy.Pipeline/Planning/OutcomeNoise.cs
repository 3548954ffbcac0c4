using System.Globalization;
using SwingStudy.Domain.Protocols;
using SwingStudy.Domain.Tables;
using SwingStudy.Pipeline.Analyse;
using SwingStudy.Statistics.Change;
using SwingStudy.Statistics.Planning;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Pipeline.Planning;

/// <summary>The scatter of an outcome that a plan goes by, and where it comes from.</summary>
/// <param name="Session">Standard deviation from session to session, canonical unit.</param>
/// <param name="Swing">Standard deviation from swing to swing within a session, canonical unit.</param>
/// <param name="Source">Where the numbers come from.</param>
/// <param name="IsOwn">Whether they were measured in this study.</param>
public sealed record OutcomeNoise(double Session, double Swing, string Source, bool IsOwn)
{
    /// <summary>Degrees of freedom between sessions below which a study's own scatter is no ground for a plan: three sessions of one player.</summary>
    private const double LeastDegrees = 2;

    /// <summary>The scatter of an outcome: the study's own where it has enough sessions, else what the protocol expects; null where neither is there.</summary>
    /// <param name="outcome">The outcome.</param>
    /// <param name="tables">The study's tables; null outside a study.</param>
    public static OutcomeNoise? Of(OutcomeMeasure outcome, TableStore? tables) =>
        Measured(outcome.Variable, tables) ?? (outcome.Noise is { } expected ? new(expected.Session, expected.Swing, expected.Basis, false) : null);

    internal NoiseModel Model(double changeBetweenPlayers = 0) => new() { Session = Session, Swing = Swing, ChangeBetweenPlayers = changeBetweenPlayers };

    private static OutcomeNoise? Measured(string outcome, TableStore? tables)
    {
        if (tables?.Table(StudyTables.Noise) is not { CurrentVersion: >= 0 } table)
            return null;
        var parts = table.Read().Select(rows => PooledNoise.Sum(rows, outcome, null)).ToList();
        if (parts.Count == 0)
            return null;
        var sum = parts.Aggregate((one, other) => one + other);
        return StudyNoise.Of(sum) is { SessionStandardDeviation: { } session, SwingStandardDeviation: { } swing, SessionDegreesOfFreedom: >= LeastDegrees }
            ? new(session, swing, string.Create(CultureInfo.InvariantCulture, $"This study's own scatter within phases: {sum.Swings} swings of {sum.Sessions} sessions."), true)
            : null;
    }
}
