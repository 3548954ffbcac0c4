namespace SwingStudy.Ingestion.Recordings;

/// <summary>The samples of one recording as they are read.</summary>
/// <param name="columns">Number of columns.</param>
/// <param name="texts">What is written about it.</param>
/// <param name="row">Its place in the file; see <see cref="Recording.Row"/>.</param>
internal sealed class SampleRun(int columns, RecordingTexts texts, int row)
{
    private const int FirstCapacity = 256;
    private const int UsualCapacity = 4096;
    private readonly double[][] _values = [.. Enumerable.Range(0, columns).Select(_ => new double[FirstCapacity])];
    private int _capacity = FirstCapacity;

    /// <summary>What is written about the recording.</summary>
    public RecordingTexts Texts => texts;

    /// <summary>Its place in the file.</summary>
    public int Row => row;

    /// <summary>Times of samples in seconds; empty without a clock.</summary>
    public List<double> Clock { get; } = [];

    /// <summary>Line of each sample.</summary>
    public List<int> Lines { get; } = [];

    /// <summary>Milliseconds from the time that is written to the first sample.</summary>
    public long StartOffsetMillis { get; init; }

    /// <summary>Contact as the cut of a stream tells it, seconds from the first sample; NaN for others.</summary>
    public double CutContactSeconds { get; init; } = double.NaN;

    /// <summary>Values of all columns so far.</summary>
    public long ValueCount => (long)Lines.Count * columns;

    /// <summary>Adds a sample.</summary>
    public void Add(ReadOnlySpan<double> values, double clockSeconds, int line)
    {
        var count = Lines.Count;
        if (count == _capacity)
            Grow();
        for (var i = 0; i < _values.Length; i++)
            _values[i][count] = values[i];
        if (!double.IsNaN(clockSeconds))
            Clock.Add(clockSeconds);
        Lines.Add(line);
    }

    /// <summary>Takes samples off the end in which no column has a value: shorter recordings beside longer ones.</summary>
    public void TrimEnd()
    {
        var length = Lines.Count;
        while (length > 0 && Array.TrueForAll(_values, column => double.IsNaN(column[length - 1])))
            length--;
        var excess = Lines.Count - length;
        Lines.RemoveRange(length, excess);
        if (Clock.Count > length)
            Clock.RemoveRange(length, Clock.Count - length);
    }

    /// <summary>The samples of a column on a grid; lost ones are NaN.</summary>
    public double[] Values(int column, SampleGrid grid)
    {
        if (grid.Places is not { } places)
            return _values[column].AsSpan(0, Lines.Count).ToArray();
        var values = new double[grid.Length];
        Array.Fill(values, double.NaN);
        for (var i = 0; i < places.Length; i++)
            values[places[i]] = _values[column][i];
        return values;
    }

    private void Grow()
    {
        _capacity *= _capacity < UsualCapacity ? 4 : 2;
        for (var i = 0; i < _values.Length; i++)
            Array.Resize(ref _values[i], _capacity);
    }
}
