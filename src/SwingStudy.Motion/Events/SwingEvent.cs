namespace SwingStudy.Motion.Events;

/// <summary>One event of a swing.</summary>
/// <param name="Name">A name of <see cref="EventNames"/>.</param>
/// <param name="TimeS">Its time.</param>
/// <param name="Method">The rule that found it, and on what.</param>
/// <param name="Confidence">0 to 1: how far the rule is from failing here.</param>
public sealed record SwingEvent(string Name, double TimeS, string Method, double Confidence);
