using NodaTime;

namespace SwingStudy.Domain.Protocols;

/// <summary>How a comparison stands to the locked protocol.</summary>
/// <param name="Time">When it was planned.</param>
/// <param name="Version">Number of the protocol version that gave it its present form; 0 before the lock.</param>
/// <param name="At">When that was; null before the lock.</param>
/// <param name="WasChanged">Whether an earlier version planned it in another form.</param>
/// <param name="Sentence">The same in words, without capital and full stop.</param>
public sealed record PlanStanding(PlanTime Time, int Version, Instant? At, bool WasChanged, string Sentence)
{
    /// <summary>Whether the comparison was planned before data that could show its effect.</summary>
    public bool IsPrespecified => Time == PlanTime.BeforeData;
}
