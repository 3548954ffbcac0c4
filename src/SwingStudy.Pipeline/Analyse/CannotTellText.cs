using SwingStudy.Statistics.Change;

namespace SwingStudy.Pipeline.Analyse;

/// <summary>Why a change has no interval, in words.</summary>
internal static class CannotTellText
{
    /// <summary>The reason; null when nothing stands against a verdict.</summary>
    public static string? Of(HonestChange change) => change.CannotTell switch
    {
        CannotTell.No => null,
        CannotTell.PhaseWithoutSwings => "a phase has no swing that counts",
        CannotTell.OneSessionWithoutSessionVariance => "a phase has one session, and the study has not seen often enough how much sessions differ",
        CannotTell.SwingVarianceUnknown => "no session has a second swing, so that scatter from swing to swing is unknown",
        var reason => throw new InvalidOperationException($"Unknown reason {reason}."),
    };
}
