using SwingStudy.Domain.Buffers;

namespace SwingStudy.Ingestion.Recordings;

/// <summary>The samples of one recording as they are read. Its buffers are pooled: see <see cref="Release"/>.</summary>
/// <param name="columns">Number of columns.</param>
/// <param name="texts">What is written about it.</param>
/// <param name="row">Its place in the file; see <see cref="Recording.Row"/>.</param>
internal sealed class SampleRun(int columns, RecordingTexts texts, int row)
{
    /// <summary>What most recordings of a swing need; they are few at a time, and their buffers go from one to the next.</summary>
    private const int FirstCapacity = 4096;

    /// <summary>Column behind column and the clock behind them, each with room for <see cref="_capacity"/> samples.</summary>
    private Rented<double> _values = new((columns + 1) * FirstCapacity);
    private Rented<int> _lines = new(FirstCapacity);
    private int _capacity = FirstCapacity;

    /// <summary>What is written about the recording.</summary>
    public RecordingTexts Texts => texts;

    /// <summary>Its place in the file.</summary>
    public int Row => row;

    /// <summary>Samples so far.</summary>
    public int Count { get; private set; }

    /// <summary>Samples whose time is known.</summary>
    public int TimedCount { get; private set; }

    /// <summary>Times of samples in seconds; NaN where not known.</summary>
    public ReadOnlySpan<double> Clock => Column(columns)[..Count];

    /// <summary>Line of each sample.</summary>
    public ReadOnlySpan<int> Lines => _lines.Span[..Count];

    /// <summary>Milliseconds from the time that is written to the first sample.</summary>
    public long StartOffsetMillis { get; init; }

    /// <summary>Contact as the cut of a stream tells it, seconds from the first sample; NaN for others.</summary>
    public double CutContactSeconds { get; init; } = double.NaN;

    /// <summary>Values of all columns so far.</summary>
    public long ValueCount => (long)Count * columns;

    /// <summary>Adds a sample.</summary>
    public void Add(ReadOnlySpan<double> values, double clockSeconds, int line)
    {
        var count = Extend([line], [clockSeconds]);
        for (var i = 0; i < columns; i++)
            Column(i)[count] = values[i];
    }

    /// <summary>Adds the samples of some of the rows that were read together.</summary>
    /// <param name="rows">The rows.</param>
    /// <param name="from">The first row to add.</param>
    /// <param name="added">How many.</param>
    /// <param name="firstColumn">Its column that is the first of this recording; the others follow.</param>
    public void Add(SampleRows rows, int from, int added, int firstColumn = 0)
    {
        var count = Extend(rows.Lines.Slice(from, added), rows.Clock.Slice(from, added));
        for (var i = 0; i < columns; i++)
            rows.Column(firstColumn + i).Slice(from, added).CopyTo(Column(i)[count..]);
    }

    /// <summary>Takes samples off the end in which no column has a value: shorter recordings beside longer ones.</summary>
    public void TrimEnd()
    {
        while (Count > 0 && IsEmpty(Count - 1))
        {
            Count--;
            TimedCount -= double.IsNaN(Column(columns)[Count]) ? 0 : 1;
        }
    }

    /// <summary>The samples of a column on a grid; lost ones are NaN.</summary>
    public double[] Values(int column, SampleGrid grid)
    {
        var samples = Column(column)[..Count];
        var values = GC.AllocateUninitializedArray<double>(grid.Length);
        if (grid.Places is not { } places)
        {
            samples.CopyTo(values);
            return values;
        }

        Array.Fill(values, double.NaN);
        for (var i = 0; i < places.Length; i++)
            values[places[i]] = samples[i];
        return values;
    }

    /// <summary>Gives the buffers back for the next recording; the samples are gone. A run that is not released is merely collected.</summary>
    public void Release()
    {
        _values.Return();
        _lines.Return();
        Count = 0;
    }

    private Span<double> Column(int column) => _values.Span.Slice(column * _capacity, _capacity);

    private bool IsEmpty(int sample)
    {
        for (var i = 0; i < columns; i++)
        {
            if (!double.IsNaN(Column(i)[sample]))
                return false;
        }

        return true;
    }

    /// <summary>Makes room and adds lines and times; says how many samples there were.</summary>
    private int Extend(ReadOnlySpan<int> lines, ReadOnlySpan<double> clock)
    {
        var count = Count;
        while (_capacity < count + lines.Length)
            Grow();
        Count += lines.Length;
        lines.CopyTo(_lines.Span[count..]);
        clock.CopyTo(Column(columns)[count..]);
        foreach (var seconds in clock)
            TimedCount += double.IsNaN(seconds) ? 0 : 1;
        return count;
    }

    private void Grow()
    {
        var capacity = 2 * _capacity;
        var larger = new Rented<double>((columns + 1) * capacity);
        for (var i = 0; i <= columns; i++)
            Column(i)[..Count].CopyTo(larger.Span[(i * capacity)..]);
        var lines = new Rented<int>(capacity);
        Lines.CopyTo(lines.Span);
        _values.Return();
        _lines.Return();
        (_values, _lines, _capacity) = (larger, lines, capacity);
    }
}
