namespace SwingStudy.Ingestion.Mapping.Times;

/// <summary>Finds the one format that fits each time of a file. Looks at all rows: a day above 12 may stand in the last.</summary>
internal sealed class TimeFormatDetector
{
    private static readonly Lazy<TimeFormat[]> Candidates = new(BuildCandidates);

    /// <summary>How times of day are written behind a day.</summary>
    private static readonly string[] Clocks =
    [
        "", " HH:mm", " HH:mm:ss", " HH:mm:ss.f", " HH:mm:ss,f", " hh:mm tt", " hh:mm:ss tt", " hh:mm:ss.f tt", " hh:mmtt", " hh:mm:sstt", " HH.mm", " HH.mm.ss", " HH.mm 'Uhr'",
        " HH:mm 'Uhr'", " HH:mm:ss 'Uhr'", " HH'h'mm", " HH'h'mm'm'ss", ", HH:mm", ", HH:mm:ss", ", hh:mm tt", ", hh:mm:ss tt", "THH:mm", "THH:mm:ss", " HH:mm z", " HH:mm:ss z", " HH:mm:ssz",
        " HH:mm:ss.f z", " hh:mm:ss tt z",
    ];

    /// <summary>Days with the name of the month.</summary>
    private static readonly string[] NamedMonths =
    [
        "dd MMM yyyy", "dd. MMM yyyy", "dd-MMM-yyyy", "dd/MMM/yyyy", "dd-MMM-yy", "dd MMM yy", "MMM dd, yyyy", "MMM dd yyyy", "yyyy-MMM-dd", "dd 'de' MMM 'de' yyyy",
        "E, MMM dd, yyyy", "E, dd MMM yyyy", "E dd MMM yyyy", "E, dd. MMM yyyy",
    ];

    private readonly List<Candidate> _alive = [.. Candidates.Value.Select(format => new Candidate(format))];
    private string? _firstMisfit;

    /// <summary>Formats that fit all texts so far and differ in what they make of them; the first is the answer when it is alone.</summary>
    public IReadOnlyList<TimeFormat> Fitting =>
        [.. _alive.GroupBy(candidate => candidate.Meaning).Select(group => group.First().Format)];

    /// <summary>The first text that left no format standing.</summary>
    public string? FirstMisfit => _firstMisfit;

    /// <summary>Takes one trimmed text into account.</summary>
    public void Observe(ReadOnlySpan<char> text)
    {
        if (_alive.Count == 0)
            return;
        for (var i = _alive.Count - 1; i >= 0; i--)
        {
            if (!_alive[i].Format.TryRead(text, out var millis, out var isUtc))
                _alive.RemoveAt(i);
            else
                _alive[i] = _alive[i] with { Meaning = HashCode.Combine(_alive[i].Meaning, millis, isUtc) };
        }

        if (_alive.Count == 0)
            _firstMisfit = text.ToString();
    }

    private static TimeFormat[] BuildCandidates()
    {
        var formats = new List<string>
        {
            "iso", "unix-s", "unix-ms", "excel-serial", "yyyyMMdd", "yyyyMMdd HHmmss", "yyyyMMddHHmmss", "yyyyMMdd HH:mm:ss", "yyyyMMdd HH:mm:ss.f", "yyyyMMdd_HHmmss",
            "yyyyMMddTHHmmss", "yyyyMMddTHHmmssz", "yyyyMMddTHHmmss.fz",
        };
        foreach (var order in (string[])["yyyy{0}MM{0}dd", "dd{0}MM{0}yyyy", "MM{0}dd{0}yyyy", "dd{0}MM{0}yy", "MM{0}dd{0}yy", "yy{0}MM{0}dd"])
        {
            foreach (var sign in (string[])[".", "/", "-"])
                formats.AddRange(Clocks.Select(clock => string.Format(System.Globalization.CultureInfo.InvariantCulture, order, sign) + clock));
        }

        foreach (var date in NamedMonths)
            formats.AddRange(Clocks.Select(clock => date + clock));
        return [.. formats.Select(text => TimeFormat.TryCompile(text, out var format, out var fault) ? format : throw new InvalidOperationException(fault))];
    }

    private readonly record struct Candidate(TimeFormat Format, int Meaning = 0);
}
