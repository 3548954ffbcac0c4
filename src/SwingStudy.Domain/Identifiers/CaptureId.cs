using System.Globalization;

namespace SwingStudy.Domain.Identifiers;

/// <summary>One device record: the original it stands in and its row there, so that the same bytes always give the same identifier.</summary>
/// <param name="Original">Hash of the original file.</param>
/// <param name="Row">Line or row in that file, counted from 1 as a person's editor counts; for one-recording files 1.</param>
public readonly record struct CaptureId(Sha256 Original, int Row)
{
    /// <summary>"0f3a…-12": the first 12 digits of the hash and the row.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Original.Short}-{Row}");
}
