using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Sources;
using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Recordings;

/// <summary>Opens files of recordings of all kinds.</summary>
internal static class RecordingReaders
{
    /// <summary>Opens a file; the caller disposes of the reader.</summary>
    public static Outcome<IRecordingReader> Open(string path, RecordingRequest request)
    {
        if (!RecordReaders.OpenUnpacked(path).Succeeded(out var stream, out var problems))
            return Outcome<IRecordingReader>.Failed(problems);
        return Open(stream, request);
    }

    /// <summary>Opens a stream, which is closed with the reader, or at once when there is none.</summary>
    public static Outcome<IRecordingReader> Open(Stream stream, RecordingRequest request)
    {
        if (request.Mapping.Reader != ReaderKind.C3d)
            return TextRecordings.Open(stream, request).Succeeded(out var text, out var problems) ? Outcome<IRecordingReader>.Of(text) : Outcome<IRecordingReader>.Failed(problems);
        return C3dRecordings.Open(stream, request).Succeeded(out var binary, out var faults) ? Outcome<IRecordingReader>.Of(binary) : Outcome<IRecordingReader>.Failed(faults);
    }
}
