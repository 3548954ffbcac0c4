namespace SwingStudy.Ingestion.Redaction;

/// <summary>Lines as an editor counts them: each of <c>\r\n</c>, <c>\n</c> and <c>\r</c> ends one.</summary>
internal static class LineBreaks
{
    /// <summary>Line breaks within a text.</summary>
    public static int In(ReadOnlySpan<char> text)
    {
        var breaks = 0;
        for (var i = 0; i < text.Length; i++)
        {
            if (text[i] == '\n' || (text[i] == '\r' && (i + 1 == text.Length || text[i + 1] != '\n')))
                breaks++;
        }

        return breaks;
    }

    /// <summary>The lines of a text with what ends them.</summary>
    public static IEnumerable<(string Line, string End)> Split(string text)
    {
        for (var from = 0; from < text.Length;)
        {
            var at = text.AsSpan(from).IndexOfAny('\r', '\n');
            if (at < 0)
            {
                yield return (text[from..], "");
                yield break;
            }

            var length = text[from + at] == '\r' && from + at + 1 < text.Length && text[from + at + 1] == '\n' ? 2 : 1;
            yield return (text.Substring(from, at), text.Substring(from + at, length));
            from += at + length;
        }
    }
}
