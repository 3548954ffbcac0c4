namespace SwingStudy.Domain.Sources;

/// <summary>A kind of recording, recognised when all that is set fits.</summary>
/// <param name="Purpose">What such recordings are for.</param>
/// <param name="File">Regular expression for the path of the file below the source's folder; null: any.</param>
/// <param name="Preamble">Regular expression for a line of the preamble; null: any.</param>
/// <param name="ShorterThanSeconds">Recordings below this length; null: any.</param>
public sealed record PurposeRule(RecordingPurpose Purpose, string? File, string? Preamble, double? ShorterThanSeconds);
