using SwingStudy.Domain.Problems;

namespace SwingStudy.Ingestion.Readers;

/// <summary>An opened export: what stands around its rows, and the rows as a stream of blocks. Owns the file until it is disposed of.</summary>
public sealed class RecordDocument : IDisposable
{
    private readonly IBlockReader _reader;
    private readonly RecordCounts _start;

    internal RecordDocument(IBlockReader reader, RecordCounts start)
    {
        _reader = reader;
        _start = start;
        Counts = start with { };
        HeadLines = (int)start.Lines;
    }

    /// <summary>Lines of preamble, headings and units together: the first row stands on a later one.</summary>
    public int HeadLines { get; }

    /// <summary>The file as the caller named it.</summary>
    public required string File { get; init; }

    /// <summary>IANA name of the encoding; null for workbooks.</summary>
    public string? Encoding { get; init; }

    /// <summary>How the encoding is known: <c>declared</c>, <c>byte order mark</c>, <c>strict UTF-8</c>, <c>fallback</c>...; null for workbooks.</summary>
    public string? EncodingBasis { get; init; }

    /// <summary>The sign between cells; null for workbooks, JSON and text of one column.</summary>
    public char? Delimiter { get; init; }

    /// <summary>Decimal sign of numbers in text cells. Cells of kind <see cref="CellKind.Number"/> always have a point.</summary>
    public required char Decimal { get; init; }

    /// <summary>Whether a workbook counts its days from 1904.</summary>
    public bool Epoch1904 { get; init; }

    /// <summary>Lines above the headings.</summary>
    public IReadOnlyList<PreambleLine> Preamble { get; init; } = [];

    /// <summary>The columns.</summary>
    public required HeadingRow Columns { get; init; }

    /// <summary>What was mended or is odd, and does not stand in the way: cleaned headings, repeated ones.</summary>
    public IReadOnlyList<Problem> Notices { get; init; } = [];

    /// <summary>What became of the records so far; complete once <see cref="Blocks"/> is read to the end.</summary>
    public RecordCounts Counts { get; private set; }

    /// <summary>
    /// The rows, block by block, from the first one on each call. The caller disposes of each block, on whichever thread; reading on while other threads
    /// still use earlier blocks is safe. Only one enumeration at a time.
    /// </summary>
    public IEnumerable<RawBlock> Blocks()
    {
        var counts = Counts = _start with { };
        foreach (var block in _reader.Read(counts))
        {
            counts.Add(block);
            yield return block;
        }
    }

    /// <summary>Closes the file.</summary>
    public void Dispose() => _reader.Dispose();
}
