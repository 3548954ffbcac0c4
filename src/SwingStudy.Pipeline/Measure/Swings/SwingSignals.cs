using SwingStudy.Domain.Protocols;
using SwingStudy.Motion.Events;

namespace SwingStudy.Pipeline.Measure.Swings;

/// <summary>All that is known of one swing over time.</summary>
/// <param name="Swing">The swing.</param>
/// <param name="Motion">Its marks; null when none were recorded.</param>
/// <param name="Forces">Its forces; null when none were recorded.</param>
/// <param name="Session">What holds for the plates of the session.</param>
/// <param name="Events">Its events, impact being zero.</param>
/// <param name="Side">+1 right-handed, −1 left-handed; null when it is not known.</param>
/// <param name="Plan">How curves are processed.</param>
internal sealed record SwingSignals(
    string Swing, MarkerSwing? Motion, ForceSwing? Forces, SessionForces Session, EventSet Events, int? Side, SignalPlan Plan)
{
    /// <summary>Why there are no forces although plates were recorded; null when nothing stands in the way.</summary>
    public string? ForcesFault { get; init; }

    /// <summary>Time of an event; NaN when it was not found.</summary>
    public double this[string name] => Events.TimeOf(name);

    /// <summary>Top of the backswing.</summary>
    public double TopS => this[EventNames.Top];

    /// <summary>Start of the swing.</summary>
    public double StartS => this[EventNames.Start];

    /// <summary>Start of the still time that is address.</summary>
    public double AddressFromS => this[EventNames.Address] - new EventLimits().StillS;

    /// <summary>End of the still time that is address.</summary>
    public double AddressToS => this[EventNames.Address];

    /// <summary>Beginning of the downswing: the top; where only forces are known, the least vertical force before impact.</summary>
    public double DownswingFromS => double.IsNaN(TopS) ? this[ForceEvents.Unweighting] : TopS;
}
