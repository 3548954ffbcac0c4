namespace SwingStudy.Pipeline.Analyse;

/// <summary>One value that counts.</summary>
/// <param name="Participant">The player.</param>
/// <param name="Session">The session.</param>
/// <param name="Phase">The phase.</param>
/// <param name="Swing">The swing.</param>
/// <param name="Order">Place of the swing in its session.</param>
/// <param name="Value">The value, canonical unit, finite.</param>
internal sealed record CountedValue(string Participant, string Session, string Phase, string Swing, double Order, double Value);
