using System.Text.RegularExpressions;
using Spectre.Console;

namespace SwingStudy.App.Terminal;

/// <summary>Plain tables of text: columns where they fit the width, cells wrapped between words; else a block a row, a line a column. No word is cut in a table.</summary>
internal static partial class Listing
{
    /// <summary>Width where nothing is known of the reader's: output that goes to a file or another program.</summary>
    private const int UsualWidth = 160;

    private const int Indent = 2;
    private const int Gap = 3;
    private const int NarrowGap = 2;

    /// <summary>A row that would be higher is easier to read as a block.</summary>
    private const int HighestRow = 6;

    /// <summary>Width of tables on a console that does not wrap by itself: what <c>COLUMNS</c> says, or 160.</summary>
    public static int TableWidth { get; } = int.TryParse(Environment.GetEnvironmentVariable("COLUMNS"), out var columns) && columns >= 20 ? columns : UsualWidth;

    /// <summary>Writes rows under headings; says so when there are none.</summary>
    public static void Write(IAnsiConsole console, IReadOnlyList<string> headings, IEnumerable<IReadOnlyList<string>> rows, string whenEmpty)
    {
        var all = rows.ToList();
        if (all.Count == 0)
        {
            console.WriteLine(whenEmpty);
            return;
        }

        foreach (var line in Lines(headings, all, WidthOf(console)))
            console.WriteLine(line);
    }

    /// <summary>Writes what is known of one thing, a label a line, the texts wrapped beside them; labels without text are left out.</summary>
    public static void WriteFacts(IAnsiConsole console, params IEnumerable<(string Label, string? Text)> facts)
    {
        var known = facts.Where(fact => fact.Text is not null).ToList();
        if (known.Count == 0)
            return;
        foreach (var line in Blocks([.. known.Select(fact => fact.Label)], [[.. known.Select(fact => fact.Text!)]], WidthOf(console)).Where(line => line.Length > 0))
            console.WriteLine(line);
    }

    /// <summary>The lines of a table in that width.</summary>
    internal static IReadOnlyList<string> Lines(IReadOnlyList<string> headings, IReadOnlyList<IReadOnlyList<string>> rows, int width)
    {
        var isWide = Enumerable.Range(0, headings.Count).Sum(column => rows.Select(row => row[column]).Append(headings[column]).Max(cell => cell.GetCellWidth())) + (Gap * (headings.Count - 1)) + Indent > width;
        var gap = isWide ? NarrowGap : Gap;
        return Widths(headings, rows, width - Indent - (gap * (headings.Count - 1))) is { } widths && rows.Max(row => Height(row, widths)) <= HighestRow
            ? [.. Table(headings, rows, widths, gap)]
            : [.. Blocks(headings, rows, width)];
    }

    private static int WidthOf(IAnsiConsole console) => console.Profile.Width >= CommandRunner.Unwrapped ? TableWidth : console.Profile.Width;

    /// <summary>Widths of the columns, none narrower than its longest word; null where these do not fit.</summary>
    private static int[]? Widths(IReadOnlyList<string> headings, IReadOnlyList<IReadOnlyList<string>> rows, int room)
    {
        var columns = Enumerable.Range(0, headings.Count).Select(column => rows.Select(row => row[column]).Append(headings[column]).ToList()).ToList();
        int[] wanted = [.. columns.Select(cells => cells.Max(cell => cell.Split('\n').Max(line => line.GetCellWidth())))];
        int[] widths = [.. columns.Select(cells => cells.Max(cell => cell.Split(' ', '\n').Max(word => word.GetCellWidth())))];
        if (widths.Sum() > room)
            return null;
        for (var left = room - widths.Sum(); left > 0; left--)
        {
            // What is left goes where most is still wanted.
            var column = Enumerable.Range(0, widths.Length).MaxBy(i => wanted[i] - widths[i]);
            if (wanted[column] == widths[column])
                break;
            widths[column]++;
        }

        return widths;
    }

    private static int Height(IReadOnlyList<string> row, int[] widths) => Enumerable.Range(0, widths.Length).Max(column => Wrapped(row[column], widths[column]).Count);

    private static IEnumerable<string> Table(IReadOnlyList<string> headings, IReadOnlyList<IReadOnlyList<string>> rows, int[] widths, int gap)
    {
        bool[] areNumbers = [.. Enumerable.Range(0, widths.Length).Select(column => rows.All(row => row[column].Length == 0 || Number().IsMatch(row[column])) && rows.Any(row => row[column].Length > 0))];
        yield return "";
        foreach (var line in Row(headings, widths, areNumbers, gap))
            yield return line;
        yield return new string(' ', Indent) + string.Join(new string(' ', gap), widths.Select(width => new string('─', width)));
        foreach (var line in rows.SelectMany(row => Row(row, widths, areNumbers, gap)))
            yield return line;
        yield return "";
    }

    private static IEnumerable<string> Row(IReadOnlyList<string> cells, int[] widths, bool[] areNumbers, int gap)
    {
        var wrapped = Enumerable.Range(0, widths.Length).Select(column => Wrapped(cells[column], widths[column])).ToList();
        for (var line = 0; line < wrapped.Max(lines => lines.Count); line++)
        {
            var texts = wrapped.Select((lines, column) => Filled(line < lines.Count ? lines[line] : "", widths[column], areNumbers[column]));
            yield return (new string(' ', Indent) + string.Join(new string(' ', gap), texts)).TrimEnd();
        }
    }

    private static IEnumerable<string> Blocks(IReadOnlyList<string> headings, IReadOnlyList<IReadOnlyList<string>> rows, int width)
    {
        var name = headings.Max(heading => heading.GetCellWidth());
        var room = Math.Max(10, width - Indent - name - Gap);
        foreach (var row in rows)
        {
            yield return "";
            for (var column = 0; column < headings.Count; column++)
            {
                var lines = Wrapped(row[column], room);
                for (var line = 0; line < lines.Count; line++)
                    yield return (new string(' ', Indent) + Filled(line == 0 ? headings[column] : "", name + Gap, isNumber: false) + lines[line]).TrimEnd();
            }
        }

        yield return "";
    }

    private static string Filled(string text, int width, bool isNumber)
    {
        var blanks = new string(' ', Math.Max(0, width - text.GetCellWidth()));
        return isNumber ? blanks + text : text + blanks;
    }

    /// <summary>Lines no wider than <paramref name="width"/>, broken between words; only a word that is wider by itself is broken within.</summary>
    private static List<string> Wrapped(string text, int width)
    {
        var lines = new List<string>();
        foreach (var given in text.Split('\n'))
        {
            var line = "";
            foreach (var word in given.Split(' ').SelectMany(word => Pieces(word, width)))
            {
                if (line.Length > 0 && line.GetCellWidth() + 1 + word.GetCellWidth() > width)
                {
                    lines.Add(line);
                    line = word;
                }
                else
                {
                    line = line.Length == 0 ? word : $"{line} {word}";
                }
            }

            lines.Add(line);
        }

        return lines;
    }

    private static IEnumerable<string> Pieces(string word, int width)
    {
        while (word.GetCellWidth() > width)
        {
            var end = Enumerable.Range(1, word.Length).Last(length => length == 1 || (word[..length].GetCellWidth() <= width && !char.IsHighSurrogate(word[length - 1])));
            yield return word[..end];
            word = word[end..];
        }

        yield return word;
    }

    [GeneratedRegex("^[+−-]?[0-9][0-9.,]*( ?(%|°|[A-Za-z/·²]{1,6}))?$")]
    private static partial Regex Number();
}
