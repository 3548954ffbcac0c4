namespace SwingStudy.Reporting.Figures;

/// <summary>A finished figure.</summary>
/// <param name="Name">Kebab-case name, fit for a file.</param>
/// <param name="Caption">What it shows, one sentence.</param>
/// <param name="AltText">Its message, for those who do not see it.</param>
/// <param name="Width">Width in points of 1/96 inch.</param>
/// <param name="Height">Height in points of 1/96 inch.</param>
/// <param name="Png">Picture at twice that size.</param>
/// <param name="Svg">Drawing.</param>
public sealed record Figure(string Name, string Caption, string AltText, int Width, int Height, byte[] Png, string Svg);
