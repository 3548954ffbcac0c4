using SwingStudy.Domain.Problems;
using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Suggest;

/// <summary>Drafts mappings of recordings: C3D, and text whose headings are channels.</summary>
internal static class RecordingGuess
{
    /// <summary>Whether the file is a recording, and then the draft is filled; or why it cannot be read.</summary>
    public static Outcome<bool> TryFill(string path, string? zone, Draft draft)
    {
        if (!RecordReaders.OpenUnpacked(path).Succeeded(out var stream, out var problems))
            return Outcome<bool>.Failed(problems);
        using (stream)
        {
            var start = new byte[4];
            var length = stream.ReadAtLeast(start, start.Length, throwOnEndOfStream: false);
            if (C3dGuess.Fits(start.AsSpan(0, length)))
                return C3dGuess.Fill(stream, path, zone, draft) is { Count: > 0 } faults ? Outcome<bool>.Failed(faults) : true;
            if (length == 0 || start.AsSpan().StartsWith("PK"u8) || start is [0xD0, 0xCF, ..] or [(byte)'{', ..] or [(byte)'[', ..])
                return false;
            return TextRecordingGuess.TryFill(stream, path, zone, draft);
        }
    }
}
