namespace SwingStudy.Motion.Events;

/// <summary>Contact in one swing of a session.</summary>
/// <param name="TimeS">Contact; in a swing that shows none itself, when the head passes the place of the ball.</param>
/// <param name="ScatterS">Standard error; NaN where a mark stands alone.</param>
/// <param name="HasMark">Whether it rests on a mark.</param>
/// <param name="HasBreak">Whether it rests on a break in the shaft's turn.</param>
/// <param name="PlaceSwings">Swings whose common place it rests on; 0 when it rests on the swing alone.</param>
public sealed record ContactOfSwing(double TimeS, double ScatterS, bool HasMark, bool HasBreak, int PlaceSwings);
