using SwingStudy.Ingestion.Mapping.Cells;

namespace SwingStudy.Ingestion.Recordings;

/// <summary>Times of day as samples carry them: <c>14:05:06.250</c>, with a point or a comma before the decimals.</summary>
internal static class TimeOfDayText
{
    private static readonly NumberText Points = new('.', null);
    private static readonly NumberText Commas = new(',', null);

    /// <summary>Reads a trimmed text into seconds since midnight.</summary>
    public static bool TryRead(ReadOnlySpan<char> text, out double seconds)
    {
        seconds = double.NaN;
        var first = text.IndexOf(':');
        var second = first < 0 ? -1 : first + 1 + text[(first + 1)..].IndexOf(':');
        if (first is not (1 or 2) || second <= first || !TryPart(text[..first], 23, out var hours) || !TryPart(text[(first + 1)..second], 59, out var minutes))
            return false;
        var rest = text[(second + 1)..];
        if (!(Points.TryRead(rest, out var part) || Commas.TryRead(rest, out part)) || part is not (>= 0 and < 60))
            return false;
        seconds = (hours * 3600) + (minutes * 60) + part;
        return true;
    }

    private static bool TryPart(ReadOnlySpan<char> text, int most, out int number) =>
        int.TryParse(text, System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out number) && number <= most && text.Length <= 2;
}
