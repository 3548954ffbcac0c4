using SwingStudy.Domain.Tables;
using SwingStudy.Statistics.Change;

namespace SwingStudy.Pipeline.Analyse;

/// <summary>Sums of scatter over the players of a study.</summary>
internal static class PooledNoise
{
    /// <summary>Sums of one outcome over players, one of them left out when named: a player's own sessions are weighed separately and must not count twice.</summary>
    public static NoiseSums Sum(RowSet noise, string outcome, string? without)
    {
        var (participants, outcomes) = (noise.Texts("participant"), noise.Texts("outcome"));
        var (swings, sessions, phases) = (noise.Integers("swings"), noise.Integers("sessions"), noise.Integers("phases"));
        var (between, within, counts) = (noise.Numbers("session_ss"), noise.Numbers("swing_ss"), noise.Numbers("square_counts"));
        return Enumerable.Range(0, noise.Count).Where(i => outcomes[i] == outcome && participants[i] != without)
            .OrderBy(i => participants[i], StringComparer.Ordinal)
            .Aggregate(NoiseSums.None, (sum, i) => sum + new NoiseSums((int)swings[i]!, (int)sessions[i]!, (int)phases[i]!, between[i], within[i], counts[i]));
    }
}
