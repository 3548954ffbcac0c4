using SwingStudy.Domain.Tables;
using SwingStudy.Statistics.Change;

namespace SwingStudy.Pipeline.Analyse;

/// <summary>Session and swing variance pooled over players.</summary>
/// <remarks>
/// Nested analysis of variance of swings in sessions in phases of players: σ_e² = MS swings, σ_s² = (MS sessions − MS swings)/k₁,
/// k₁ = (N − Σ n_ij²/n_i)/(b − a); degrees of freedom of σ_s² after Satterthwaite, (MS_s − MS_e)²/(MS_s²/(b − a) + MS_e²/(N − b)). A negative
/// σ_s² is zero with b − a degrees of freedom. Sources: Searle (1971), Linear Models, ch. 11; Satterthwaite (1946), Biometrics Bulletin 2:110–114.
/// </remarks>
internal static class PooledNoise
{
    /// <summary>Sums of one outcome over players, one of them left out when named: a player's own sessions are weighed separately and must not count twice.</summary>
    public static PlayerNoise Sum(RowSet noise, string outcome, string? without)
    {
        var (participants, outcomes) = (noise.Texts("participant"), noise.Texts("outcome"));
        var (swings, sessions, phases) = (noise.Integers("swings"), noise.Integers("sessions"), noise.Integers("phases"));
        var (between, within, counts) = (noise.Numbers("session_ss"), noise.Numbers("swing_ss"), noise.Numbers("square_counts"));
        return Enumerable.Range(0, noise.Count).Where(i => outcomes[i] == outcome && participants[i] != without)
            .OrderBy(i => participants[i], StringComparer.Ordinal)
            .Aggregate(PlayerNoise.None, (sum, i) => sum + new PlayerNoise((int)swings[i]!, (int)sessions[i]!, (int)phases[i]!, between[i], within[i], counts[i]));
    }

    /// <summary>What the sums say of noise; unknown where no phase has a second session or no session a second swing.</summary>
    public static StudyNoise Of(PlayerNoise sum)
    {
        var (sessionDf, swingDf) = (sum.Sessions - sum.Phases, sum.Swings - sum.Sessions);
        if (swingDf <= 0)
            return StudyNoise.Unknown;
        var swing = sum.SwingSquares / swingDf;
        var known = StudyNoise.Unknown with { SwingStandardDeviation = Math.Sqrt(swing), SwingDegreesOfFreedom = swingDf };
        if (sessionDf <= 0)
            return known;
        var session = sum.SessionSquares / sessionDf;
        var k1 = (sum.Swings - sum.SquareCounts) / sessionDf;
        return session > swing
            ? known with
            {
                SessionStandardDeviation = Math.Sqrt((session - swing) / k1),
                SessionDegreesOfFreedom = (session - swing) * (session - swing) / ((session * session / sessionDf) + (swing * swing / swingDf)),
            }
            : known with { SessionStandardDeviation = 0, SessionDegreesOfFreedom = sessionDf };
    }
}
