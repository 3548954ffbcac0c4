namespace SwingStudy.Domain.Variables;

/// <summary>Range in which values usually lie. No norm for any player: the comparison that counts is the player's own baseline.</summary>
/// <param name="Low">Lower end, canonical unit.</param>
/// <param name="High">Upper end, canonical unit.</param>
/// <param name="Basis">What the range rests on: a source, or "flag only".</param>
/// <param name="Note">For which club or situation it holds.</param>
public sealed record TypicalRange(double Low, double High, string Basis, string? Note = null);
