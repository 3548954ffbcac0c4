using SwingStudy.Ingestion.Mapping.Times;
using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Suggest;

/// <summary>What all cells of one column look like.</summary>
internal sealed class ColumnProfile(Heading heading, CellNumbers numbers, bool isUnderGroup = false)
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
    public string[] Words { get; } = Suggest.TrailingUnit.Without(HeadingText.SplitUnit(heading.Text).Bare);

    /// <summary>Unit that stands at the heading's end without brackets, as in <c>carry_yards</c>; null where none does.</summary>
    public string? TrailingUnit { get; } = heading.Unit is null ? Suggest.TrailingUnit.Of(heading.Text) : null;

    /// <summary>Words of its heading without the group above it, or without the keys around it in JSON.</summary>
    public string[] OwnWords { get; } = Own(heading, isUnderGroup);

    /// <summary>Signs between thousands, with how many cells have them.</summary>
    public Dictionary<char, int> Thousands { get; } = [];

    /// <summary>Units that stand in cells behind numbers, with how many cells have them.</summary>
    public Dictionary<string, int> CellUnits { get; } = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>Single letters that stand in cells behind numbers, as for left and right.</summary>
    public HashSet<string> CellLetters { get; } = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>Whether most numbers have their unit behind them.</summary>
    public bool HasUnitsInCells => CellUnits.Count > 0 && CellUnits.Values.Sum() * 10 >= Numeric * 8;

    /// <summary>Cells with text.</summary>
    public int Filled { get; private set; }

    /// <summary>Cells that hold no value: errors of a workbook, lists in JSON.</summary>
    public int Errors { get; private set; }

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

    /// <summary>Whether all cells could be times of day with points, as <c>14.05.07</c>: only a heading tells them from days.</summary>
    public bool IsDottedClock { get; private set; } = true;

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
        Errors += kind == CellKind.Error ? 1 : 0;
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

        IsDottedClock &= IsDotted(text);
        if (double.IsNaN(number) && IsClockText(text))
        {
            Clocks++;
            Keep(text);
        }
        else if (!double.IsNaN(number) || numbers.TryRead(text, this, out number))
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
        }

        _times.Observe(text);
    }

    private static string[] Own(Heading heading, bool isUnderGroup)
    {
        var bare = HeadingText.SplitUnit(heading.Text).Bare;
        var dot = bare.Contains(' ', StringComparison.Ordinal) ? -1 : bare.TrimEnd('.').LastIndexOf('.');
        var words = Suggest.TrailingUnit.Without(dot > 0 ? bare[(dot + 1)..] : bare);
        return isUnderGroup && dot <= 0 && words.Length > 1 ? words[1..] : words;
    }

    private static bool IsClockText(ReadOnlySpan<char> text)
    {
        var first = text.IndexOfAny(':', 'h');
        return first is 1 or 2 && text.Length <= 15 && char.IsAsciiDigit(text[0]) && text.Count(':') <= 2 && !text.ContainsAny('-', '/') && (text[first] == ':' || IsHour(text, first));
    }

    /// <summary>Hours, minutes and perhaps seconds with points between them.</summary>
    private static bool IsDotted(ReadOnlySpan<char> text)
    {
        var points = text.Count('.');
        var first = text.IndexOf('.');
        return points is 1 or 2 && first is 1 or 2 && text.Length == first + (3 * points) && int.TryParse(text[..first], out var hours) && hours < 24 && char.IsAsciiDigit(text[^1]) && char.IsAsciiDigit(text[^2]);
    }

    /// <summary>Hours and minutes as French writes them: <c>14h05</c>.</summary>
    private static bool IsHour(ReadOnlySpan<char> text, int mark) => text.Length >= mark + 3 && char.IsAsciiDigit(text[mark + 1]) && char.IsAsciiDigit(text[mark + 2]);

    private void Keep(ReadOnlySpan<char> text)
    {
        var texts = Texts.GetAlternateLookup<ReadOnlySpan<char>>();
        if (texts.TryGetValue(text, out var count))
            texts[text] = count + 1;
        else if (Texts.Count < MostTexts)
            texts[text] = 1;
    }
}
