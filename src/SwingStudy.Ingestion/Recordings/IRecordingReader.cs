using SwingStudy.Domain.Problems;
using SwingStudy.Ingestion.Mapping;
using SwingStudy.Ingestion.Mapping.Rows;
using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Recordings;

/// <summary>The recordings of one opened file. What is beside <see cref="Read"/> is complete once that has ended.</summary>
internal interface IRecordingReader : IDisposable
{
    /// <summary>Lines above the headings, or the parameters of a binary file as lines.</summary>
    IReadOnlyList<PreambleLine> Preamble { get; }

    /// <summary>Encoding of text; null for others.</summary>
    string? Encoding { get; }

    /// <summary>The sign between cells; null where there is none.</summary>
    char? Delimiter { get; }

    /// <summary>The decimal sign of text; null for others.</summary>
    char? Decimal { get; }

    /// <summary>Why the file is held.</summary>
    IReadOnlyList<Problem> Problems { get; }

    /// <summary>What does not stand in the way but should be known.</summary>
    IReadOnlyList<Problem> Remarks { get; }

    /// <summary>Lines and cells that could not be taken.</summary>
    IReadOnlyList<MappedReject> Rejects { get; }

    /// <summary>The balance: lines of text, or one record for a binary file.</summary>
    LineCounts Counts { get; }

    /// <summary>Whether the file has all that the mapping names.</summary>
    bool Fits();

    /// <summary>The recordings in file order, each once; stops at the first problem that holds the file.</summary>
    IEnumerable<Recording> Read();
}
