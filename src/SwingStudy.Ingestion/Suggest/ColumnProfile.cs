using SwingStudy.Ingestion.Mapping.Cells;
using SwingStudy.Ingestion.Mapping.Times;
using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Suggest;

/// <summary>What all cells of one column look like.</summary>
internal sealed class ColumnProfile(Heading heading, NumberText numbers)
{
    private const int MostTexts = 500;
    private const int MostNumbers = 20_000;
    private readonly TimeFormatDetector _times = new();
    private readonly List<double> _numbers = [];
    private double _last = double.NaN;
    private int _rises;

    /// <summary>Its heading.</summary>
    public Heading Heading { get; } = heading;

    /// <summary>Words of its heading without the unit.</summary>
    public string[] Words { get; } = HeadingWords.Of(HeadingText.SplitUnit(heading.Text).Bare);

    /// <summary>Cells with text.</summary>
    public int Filled { get; private set; }

    /// <summary>Cells with a number.</summary>
    public int Numeric { get; private set; }

    /// <summary>Workbook cells with a date style.</summary>
    public int Dates { get; private set; }

    /// <summary>Whether a workbook date has a time of day.</summary>
    public bool HasTimeOfDay { get; private set; }

    /// <summary>Cells with a time of day alone.</summary>
    public int Clocks { get; private set; }

    /// <summary>Cells with a usual token for nothing.</summary>
    public int Missing { get; private set; }

    /// <summary>Distinct texts of cells that are no numbers, with how often they occur; as many as are worth keeping.</summary>
    public Dictionary<string, int> Texts { get; } = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>Formats that fit all cells with text.</summary>
    public IReadOnlyList<TimeFormat> TimeFormats => Filled - Missing == 0 ? [] : _times.Fitting;

    /// <summary>Whether most cells with text are numbers.</summary>
    public bool IsNumeric => Numeric > 0 && Numeric * 10 >= (Filled - Missing) * 8;

    /// <summary>Whether most cells are a time of day.</summary>
    public bool IsClock => Clocks > 0 && Clocks * 10 >= (Filled - Missing) * 9;

    /// <summary>Whether it holds whole numbers that mostly go up by one.</summary>
    public bool Counts => IsNumeric && _rises * 10 >= (Numeric - 1) * 6 && _numbers.TrueForAll(double.IsInteger);

    /// <summary>Its numbers in order of size.</summary>
    public double[] Sorted()
    {
        var sorted = _numbers.ToArray();
        Array.Sort(sorted);
        return sorted;
    }

    /// <summary>Takes a cell into account.</summary>
    public void Observe(ReadOnlySpan<char> cell, CellKind kind, double number)
    {
        var text = cell.Trim();
        if (text.IsEmpty || kind is CellKind.Empty or CellKind.Error)
            return;
        Filled++;
        if (kind == CellKind.Date)
        {
            Dates++;
            if (number is >= 0 and < 1)
                Clocks++;
            else
                HasTimeOfDay |= number != Math.Floor(number);
            return;
        }

        if (text.Length < 8 && RoleWords.IsMissing(text.ToString()))
        {
            Missing++;
            Keep(text);
            return;
        }

        if (!double.IsNaN(number) || numbers.TryRead(text, out number))
        {
            Numeric++;
            if (number == _last + 1)
                _rises++;
            _last = number;
            if (_numbers.Count < MostNumbers)
                _numbers.Add(number);
        }
        else
        {
            Keep(text);
            if (IsClockText(text))
                Clocks++;
        }

        _times.Observe(text);
    }

    private static bool IsClockText(ReadOnlySpan<char> text)
    {
        var colons = text.Count(':');
        return colons is 1 or 2 && text.Length <= 15 && char.IsAsciiDigit(text[0]) && text.IndexOf(':') <= 2 && !text.ContainsAny('-', '/');
    }

    private void Keep(ReadOnlySpan<char> text)
    {
        var texts = Texts.GetAlternateLookup<ReadOnlySpan<char>>();
        if (texts.TryGetValue(text, out var count))
            texts[text] = count + 1;
        else if (Texts.Count < MostTexts)
            texts[text] = 1;
    }
}
