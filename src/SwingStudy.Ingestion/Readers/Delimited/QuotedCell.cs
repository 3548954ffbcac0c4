using System.Buffers;

namespace SwingStudy.Ingestion.Readers.Delimited;

/// <summary>A cell in quotes.</summary>
/// <param name="State">How it ends.</param>
/// <param name="End">Position of the closing quote.</param>
/// <param name="HasEscapes">Whether doubled quotes stand in it.</param>
/// <param name="LineBreaks">Line breaks in it, CR LF as one.</param>
internal readonly record struct QuotedCell(QuotedState State, int End = 0, bool HasEscapes = false, int LineBreaks = 0)
{
    private static readonly SearchValues<char> QuotesAndBreaks = SearchValues.Create("\"\r\n");

    /// <summary>Reads from the opening quote at <paramref name="open"/>.</summary>
    public static QuotedCell Read(ReadOnlySpan<char> text, int open, char delimiter, bool isLast)
    {
        var at = open + 1;
        var escapes = false;
        var breaks = 0;
        while (true)
        {
            var distance = text[at..].IndexOfAny(QuotesAndBreaks);
            if (distance < 0)
                return new(isLast ? QuotedState.Unterminated : QuotedState.Incomplete);
            at += distance;
            if (text[at] != '"')
            {
                if (text[at] == '\n' || at + 1 == text.Length || text[at + 1] != '\n')
                    breaks++;
                at++;
                continue;
            }

            if (at + 1 == text.Length)
                return isLast ? new(QuotedState.Closed, at, escapes, breaks) : new(QuotedState.Incomplete);
            if (text[at + 1] == '"')
            {
                escapes = true;
                at += 2;
                continue;
            }

            return text[at + 1] == delimiter || text[at + 1] is '\n' or '\r'
                ? new(QuotedState.Closed, at, escapes, breaks)
                : new(QuotedState.TextBehind);
        }
    }
}
