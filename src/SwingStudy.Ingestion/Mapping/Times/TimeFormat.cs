using System.Diagnostics.CodeAnalysis;
using SwingStudy.Ingestion.Mapping.Cells;

namespace SwingStudy.Ingestion.Mapping.Times;

/// <summary>How the time of a row is written: a pattern of local time, ISO 8601, an epoch or a workbook's serial day.</summary>
internal sealed class TimeFormat
{
    private static readonly NumberText PointNumbers = new('.', null);
    private static readonly NumberText CommaNumbers = new(',', null);
    private readonly Kind _kind;
    private readonly TimePattern? _pattern;

    private TimeFormat(Kind kind, string text, TimePattern? pattern = null)
    {
        _kind = kind;
        _pattern = pattern;
        Text = text;
    }

    private enum Kind
    {
        Pattern,
        Iso,
        UnixSeconds,
        UnixMillis,
        ExcelSerial,
    }

    /// <summary>The format as declared.</summary>
    public string Text { get; }

    /// <summary>Whether its times are local and need a zone.</summary>
    public bool NeedsZone => _kind == Kind.ExcelSerial || (_kind == Kind.Pattern && !_pattern!.HasOffset);

    /// <summary>Whether each part is a number and the parts are added (a serial day and a fraction of a day).</summary>
    public bool AddsParts => _kind == Kind.ExcelSerial;

    /// <summary>Whether an offset from UTC may stand in the text itself.</summary>
    public bool MayCarryOffset => _kind == Kind.Iso;

    /// <summary>Reads a declared format; false, with the reason, when it is none.</summary>
    public static bool TryCompile(string text, [NotNullWhen(true)] out TimeFormat? format, [NotNullWhen(false)] out string? fault)
    {
        fault = null;
        format = text switch
        {
            "iso" => new TimeFormat(Kind.Iso, text),
            "unix-s" => new TimeFormat(Kind.UnixSeconds, text),
            "unix-ms" => new TimeFormat(Kind.UnixMillis, text),
            "excel-serial" => new TimeFormat(Kind.ExcelSerial, text),
            _ => null,
        };
        if (format is not null)
            return true;
        if (!TimePattern.TryCompile(text, out var pattern, out fault))
            return false;
        format = new TimeFormat(Kind.Pattern, text, pattern);
        return true;
    }

    /// <summary>Reads a trimmed text into milliseconds since 1970: UTC when <paramref name="isUtc"/>, else local.</summary>
    public bool TryRead(ReadOnlySpan<char> text, out long millis, out bool isUtc)
    {
        isUtc = _kind is Kind.UnixSeconds or Kind.UnixMillis || _pattern is { HasOffset: true };
        switch (_kind)
        {
            case Kind.Pattern:
                return _pattern!.TryRead(text, out millis);
            case Kind.Iso:
                return IsoTime.TryRead(text, out millis, out isUtc);
            case Kind.UnixSeconds:
                return TryEpoch(text, 1000, out millis);
            case Kind.UnixMillis:
                return TryEpoch(text, 1, out millis);
            default:
                millis = 0;
                if (!TrySerial(text, out var days))
                    return false;
                return ExcelSerial.TryToLocalMillis(days, out millis);
        }
    }

    /// <summary>A number of days or a fraction of a day, as one part of a serial time.</summary>
    public static bool TrySerial(ReadOnlySpan<char> text, out double days) =>
        PointNumbers.TryRead(text, out days) || CommaNumbers.TryRead(text, out days);

    private static bool TryEpoch(ReadOnlySpan<char> text, double toMillis, out long millis)
    {
        millis = 0;
        if (!PointNumbers.TryRead(text, out var number) && !CommaNumbers.TryRead(text, out number))
            return false;
        var exact = Math.Floor((number * toMillis) + 1e-6);

        // From 1980 to 2200: what lies outside is another unit or no time.
        if (exact is < 315_532_800_000 or > 7_258_118_400_000)
            return false;
        millis = (long)exact;
        return true;
    }
}
