namespace SwingStudy.Domain.Protocols;

/// <summary>The scatter of an outcome that a protocol expects before its study has any of its own.</summary>
/// <param name="Session">Standard deviation of session effects, canonical unit: how much one day differs from the next.</param>
/// <param name="Swing">Standard deviation of single swings within a session, canonical unit.</param>
/// <param name="Basis">Where the numbers come from.</param>
public sealed record ExpectedNoise(double Session, double Swing, string Basis);
