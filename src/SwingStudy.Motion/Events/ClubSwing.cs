using SwingStudy.Motion.Geometry;

namespace SwingStudy.Motion.Events;

/// <summary>Hands and club head of one swing, and what is known of its contact before others are asked.</summary>
/// <param name="Hands">A mark at the hands: the grip, or else the lead wrist.</param>
/// <param name="Head">The club head.</param>
/// <param name="MarkedS">Contact as a device marked or heard it; NaN when none did.</param>
/// <param name="MarkFloorS">Standard error that such a mark has at least; 0 when none is known.</param>
/// <param name="NearS">A moment near contact for want of a mark; NaN when nothing tells one.</param>
public sealed record ClubSwing(Trajectory Hands, Trajectory Head, double MarkedS, double MarkFloorS, double NearS);
