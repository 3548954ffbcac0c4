using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Sources;
using SwingStudy.Ingestion.Readers.Delimited;
using SwingStudy.Ingestion.Readers.Json;
using SwingStudy.Ingestion.Readers.Packed;
using SwingStudy.Ingestion.Readers.Workbook;

namespace SwingStudy.Ingestion.Readers;

/// <summary>Opens exports of all kinds as documents of rows.</summary>
public static class RecordReaders
{
    /// <summary>Opens a file.</summary>
    /// <param name="path">The file; also its name in messages.</param>
    /// <param name="mapping">What is declared of it. What is not declared is found from the whole file.</param>
    /// <returns>The document, which the caller disposes of, or all problems that hold the file. Bad input never throws.</returns>
    public static Outcome<RecordDocument> Open(string path, SourceMapping mapping)
    {
        if (!OpenFile(path).Succeeded(out var stream, out var problems))
            return Outcome<RecordDocument>.Failed(problems);
        return Open(stream, path, mapping);
    }

    /// <summary>Opens a stream, which is closed with the document, or at once when there is none.</summary>
    /// <param name="stream">The bytes; read more than once.</param>
    /// <param name="name">Name of the file in messages.</param>
    /// <param name="mapping">What is declared of it.</param>
    /// <exception cref="ArgumentException">The stream cannot seek.</exception>
    public static Outcome<RecordDocument> Open(Stream stream, string name, SourceMapping mapping)
    {
        if (!stream.CanSeek)
            throw new ArgumentException("The stream must be able to seek: a file is read once to find its form and once for its rows.", nameof(stream));
        if (!PackedFile.Open(stream, name).Succeeded(out var bytes, out var problems))
        {
            stream.Dispose();
            return Outcome<RecordDocument>.Failed(problems);
        }

        var outcome = OpenAs(mapping.Reader, bytes, name, mapping);
        if (!outcome.Succeeded(out _))
            bytes.Dispose();
        return outcome;
    }

    /// <summary>Opens a file, unpacked where it is packed.</summary>
    internal static Outcome<Stream> OpenUnpacked(string path)
    {
        if (!OpenFile(path).Succeeded(out var stream, out var problems))
            return Outcome<Stream>.Failed(problems);
        var unpacked = PackedFile.Open(stream, path);
        if (unpacked.Problems.Count > 0)
            stream.Dispose();
        return unpacked;
    }

    /// <summary>Opens the bytes of a file as they are; those of a small one are held.</summary>
    internal static Outcome<Stream> OpenFile(string path)
    {
        if (Directory.Exists(path))
            return ReaderMessages.IsFolder(path);
        try
        {
            var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read, bufferSize: 0, FileOptions.SequentialScan);
            return Outcome<Stream>.Of(file.Length <= ReaderLimits.HeldBytes ? HeldFile.Of(file) : file);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return ReaderMessages.NotReadable(path, e.Message);
        }
    }

    private static Outcome<RecordDocument> OpenAs(ReaderKind kind, Stream stream, string name, SourceMapping mapping)
    {
        if (stream.Length == 0)
            return ReaderMessages.Empty(name);
        var start = new byte[4];
        stream.Position = 0;
        if (ReaderMessages.OtherFormat(start.AsSpan(0, stream.ReadAtLeast(start, start.Length, throwOnEndOfStream: false)), name) is { } other)
            return other;
        return kind switch
        {
            ReaderKind.Delimited => DelimitedReader.Open(stream, name, mapping),
            ReaderKind.Json or ReaderKind.Ndjson => JsonReader.Open(stream, name, mapping),
            ReaderKind.Workbook => WorkbookReader.Open(stream, name, mapping),
            ReaderKind.C3d => ReaderMessages.NotRows(name),
            _ => throw new ArgumentOutOfRangeException(nameof(mapping), kind, "No reader of this kind."),
        };
    }
}
