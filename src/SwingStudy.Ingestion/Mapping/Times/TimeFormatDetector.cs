namespace SwingStudy.Ingestion.Mapping.Times;

/// <summary>Finds the one format that fits each time of a file. Looks at all rows: a day above 12 may stand in the last.</summary>
internal sealed class TimeFormatDetector
{
    private static readonly Lazy<TimeFormat[]> Candidates = new(BuildCandidates);
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
        var formats = new List<string> { "iso", "unix-s", "unix-ms", "excel-serial", "yyyyMMdd", "yyyyMMdd HHmmss", "yyyyMMddHHmmss", "yyyyMMdd HH:mm:ss", "yyyyMMdd HH:mm:ss.f", "yyyyMMdd_HHmmss" };
        string[] orders = ["yyyy{0}MM{0}dd", "dd{0}MM{0}yyyy", "MM{0}dd{0}yyyy", "dd{0}MM{0}yy", "MM{0}dd{0}yy", "yy{0}MM{0}dd"];
        string[] times = ["", " HH:mm", " HH:mm:ss", " HH:mm:ss.f", " hh:mm tt", " hh:mm:ss tt", " hh:mm:ss.f tt", " HH.mm", " HH.mm.ss", ", HH:mm", ", HH:mm:ss"];
        foreach (var order in orders)
        {
            foreach (var sign in (string[])[".", "/", "-"])
            {
                foreach (var time in times)
                    formats.Add(string.Format(System.Globalization.CultureInfo.InvariantCulture, order, sign) + time);
            }
        }

        return [.. formats.Select(text => TimeFormat.TryCompile(text, out var format, out var fault) ? format : throw new InvalidOperationException(fault))];
    }

    private readonly record struct Candidate(TimeFormat Format, int Meaning = 0);
}
