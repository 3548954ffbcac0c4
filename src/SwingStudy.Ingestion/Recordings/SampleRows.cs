using SwingStudy.Ingestion.Mapping.Rows;
using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Recordings;

/// <summary>Reads neighbouring rows of samples, column by column, which is several times as fast as cell beside cell.</summary>
/// <param name="clock">Column of times; null where there is none.</param>
/// <param name="columns">Columns of samples.</param>
/// <param name="rejects">Takes cells that cannot be read: row by row, and in a row the clock before the columns in their order.</param>
internal sealed class SampleRows(SampleColumn? clock, IReadOnlyList<SampleColumn> columns, List<MappedReject> rejects)
{
    /// <summary>Most rows that are read at a time: their text and their values stay near the processor.</summary>
    public const int Most = 128;

    private readonly double[] _values = new double[columns.Count * Most];
    private readonly double[] _clock = [.. Enumerable.Repeat(double.NaN, Most)];
    private readonly int[] _lines = new int[Most];

    /// <summary>Rows at hand.</summary>
    public int Count { get; private set; }

    /// <summary>Line of each row.</summary>
    public ReadOnlySpan<int> Lines => _lines.AsSpan(0, Count);

    /// <summary>Time of each row in seconds; NaN where lost or unreadable, or where there is no clock.</summary>
    public ReadOnlySpan<double> Clock => _clock.AsSpan(0, Count);

    /// <summary>Values of a column of samples, one a row; NaN where lost or unreadable.</summary>
    public ReadOnlySpan<double> Column(int position) => _values.AsSpan(position * Most, Count);

    /// <summary>Reads the rows of a block from one up to another, in place of those at hand.</summary>
    public void Read(RawBlock block, int from, int upTo)
    {
        Count = upTo - from;
        for (var i = 0; i < Count; i++)
            _lines[i] = block.Line(from + i);
        var before = rejects.Count;
        clock?.Read(block, from, _clock.AsSpan(0, Count), rejects);
        for (var i = 0; i < columns.Count; i++)
            columns[i].Read(block, from, _values.AsSpan(i * Most, Count), rejects);
        if (rejects.Count == before)
            return;
        var found = rejects.GetRange(before, rejects.Count - before);
        rejects.RemoveRange(before, found.Count);
        rejects.AddRange(found.OrderBy(reject => reject.Line));
    }
}
