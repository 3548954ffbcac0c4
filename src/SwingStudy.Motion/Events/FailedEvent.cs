namespace SwingStudy.Motion.Events;

/// <summary>An event that could not be found; it stays missing and is not guessed.</summary>
/// <param name="Name">A name of <see cref="EventNames"/>.</param>
/// <param name="Reason">Why, for people.</param>
public sealed record FailedEvent(string Name, string Reason);
