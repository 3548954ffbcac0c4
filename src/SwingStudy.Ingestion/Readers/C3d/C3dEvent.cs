namespace SwingStudy.Ingestion.Readers.C3d;

/// <summary>An event that was marked in a C3D recording.</summary>
/// <param name="Label">Its name; may be empty.</param>
/// <param name="TimeSeconds">From the first frame of the file.</param>
/// <param name="Context">Side or "General"; null in the header.</param>
/// <param name="Subject">Who it is about; null in the header.</param>
public sealed record C3dEvent(string Label, double TimeSeconds, string? Context = null, string? Subject = null);
