using SwingStudy.Domain.Tables;

namespace SwingStudy.Storage.Tables.Columnar;

/// <summary>Least and greatest value and the gaps of one column over the row groups of a file.</summary>
internal sealed class ColumnBounds
{
    private const int LongestText = 32;
    private const string AboveAllTexts = "\U0010FFFF";

    /// <summary>Least number (double), integer or millisecond (long); null when there is none.</summary>
    internal object? Low { get; private set; }

    /// <summary>Greatest number, integer or millisecond.</summary>
    internal object? High { get; private set; }

    /// <summary>Rows without a value.</summary>
    internal long Missing { get; private set; }

    /// <summary>A text not above any value, cut to 32 characters; null when there is none.</summary>
    internal string? LowText => _low is null ? null : _low[..Cut(_low)];

    /// <summary>A text not below any value; null when there is none.</summary>
    internal string? HighText => _high is null || _high.Length <= LongestText ? _high : _high[..Cut(_high)] + AboveAllTexts;

    private string? _low;
    private string? _high;

    /// <summary>Takes the column's next values.</summary>
    internal void Add(Column column)
    {
        switch (column)
        {
            case TextColumn text:
                AddTexts(text.Values);
                break;
            case NumberColumn numbers:
                AddNumbers(numbers.Values);
                break;
            case IntegerColumn integers:
                AddIntegers(integers.Values);
                break;
            case InstantColumn instants:
                AddInstants(instants.UnixMillis);
                break;
            default:
                for (var i = 0; i < column.Length; i++)
                    Missing += column.IsMissing(i) ? 1 : 0;
                break;
        }
    }

    /// <summary>Takes the bounds of more rows.</summary>
    internal void Add(ColumnBounds more)
    {
        Missing += more.Missing;
        if (more.Low is double low && more.High is double high)
            Widen(low, high);
        if (more.Low is long least && more.High is long greatest)
        {
            Widen(least);
            Widen(greatest);
        }

        Widen(more._low);
        Widen(more._high);
    }

    private void AddNumbers(double[] values)
    {
        double low = double.PositiveInfinity, high = double.NegativeInfinity;
        var missing = 0;
        foreach (var value in values)
        {
            if (double.IsNaN(value))
            {
                missing++;
                continue;
            }

            low = value < low ? value : low;
            high = value > high ? value : high;
        }

        Missing += missing;
        if (missing < values.Length)
            Widen(low, high);
    }

    private void Widen(double low, double high)
    {
        Low = Low is double lower && lower < low ? lower : low;
        High = High is double higher && higher > high ? higher : high;
    }

    private void AddIntegers(long?[] values)
    {
        long low = long.MaxValue, high = long.MinValue;
        var missing = 0;
        foreach (var value in values)
        {
            if (value is { } present)
                (low, high) = (Math.Min(low, present), Math.Max(high, present));
            else
                missing++;
        }

        Add(low, high, missing, values.Length);
    }

    private void AddInstants(long[] unixMillis)
    {
        long low = long.MaxValue, high = long.MinValue;
        var missing = 0;
        foreach (var value in unixMillis)
        {
            if (value == InstantColumn.MissingMillis)
                missing++;
            else
                (low, high) = (Math.Min(low, value), Math.Max(high, value));
        }

        Add(low, high, missing, unixMillis.Length);
    }

    private void Add(long low, long high, int missing, int rows)
    {
        Missing += missing;
        if (missing == rows)
            return;
        Widen(low);
        Widen(high);
    }

    private void Widen(long value)
    {
        if (Low is not long low || value < low)
            Low = value;
        if (High is not long high || value > high)
            High = value;
    }

    private void AddTexts(string?[] values)
    {
        string? last = null;
        foreach (var value in values)
        {
            if (value is null)
            {
                Missing++;
                continue;
            }

            if (ReferenceEquals(value, last))
                continue;
            last = value;
            Widen(value);
        }
    }

    private void Widen(string? value)
    {
        if (value is null)
            return;
        if (_low is null || CodePointOrder.Compare(value, _low) < 0)
            _low = value;
        if (_high is null || CodePointOrder.Compare(value, _high) > 0)
            _high = value;
    }

    private static int Cut(string text) => text.Length <= LongestText
        ? text.Length
        : char.IsHighSurrogate(text[LongestText - 1]) ? LongestText - 1 : LongestText;
}
