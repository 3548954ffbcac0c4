using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Sources;

namespace SwingStudy.Ingestion.Readers;

/// <summary>Finds headings, preamble and units row among the first records, by the headings that the mapping names.</summary>
internal static class HeadingFinder
{
    /// <summary>The layout, or why there is none. The best row must hold at least half of the mapped headings.</summary>
    public static Outcome<RowLayout> Find(HeadRecords records, SourceMapping mapping, string file)
    {
        if (records.All(record => IsBlank(record)))
            return ReaderMessages.Empty(file);
        var layout = mapping.Layout;
        if (layout.HeadingRows == 0)
            return WithoutHeadings(records, layout.PreambleRows ?? 0);
        var wanted = MappedColumns.Of(mapping);
        if (layout.PreambleRows is { } preamble)
        {
            var declared = records.TakeWhile(record => record.Line <= preamble).Count();
            return records.Has(declared + layout.HeadingRows - 1)
                ? Checked(At(records, declared, layout, wanted), file)
                : ReaderMessages.HeadingBelowEnd(file, preamble + 1);
        }

        var best = (Index: -1, Hits: -1, Row: (HeadingRow?)null);
        for (var i = 0; records.Has(i + layout.HeadingRows - 1); i++)
        {
            if (IsBlank(records[i]))
                continue;
            var row = HeadingRow.From(Texts(records, i, layout.HeadingRows), null);
            var hits = wanted.Count(name => row.Find(name) is not null);
            if (hits > best.Hits || (wanted.Count == 0 && row.Headings.Count > best.Row!.Headings.Count))
                best = (i, hits, row);
            if (hits == wanted.Count && hits > 0)
                break;
        }

        return best.Hits * 2 < wanted.Count || best.Row is null
            ? ReaderMessages.HeadingsMissing(file, wanted, best.Row is null || best.Hits == 0 ? null : records[best.Index].Line, best.Row)
            : Checked(At(records, best.Index, layout, wanted), file);
    }

    /// <summary>Joins one or two rows to headings: an empty cell of the upper row takes the text to its left.</summary>
    public static IReadOnlyList<string> Joined(IReadOnlyList<string> upper, IReadOnlyList<string> lower)
    {
        var texts = new string[Math.Max(upper.Count, lower.Count)];
        var group = "";
        for (var i = 0; i < texts.Length; i++)
        {
            if (i < upper.Count && HeadingText.Clean(upper[i]).Length > 0)
                group = upper[i];
            var own = i < lower.Count ? lower[i] : "";
            texts[i] = HeadingText.Clean(own).Length == 0 ? (i < upper.Count ? upper[i] : "") : group.Length == 0 ? own : $"{group} {own}";
        }

        return texts;
    }

    private static Outcome<RowLayout> Checked(RowLayout layout, string file) =>
        layout.Columns.Headings.Count > ReaderLimits.Columns
            ? ReaderMessages.TooManyColumns(file, layout.HeadingLine, layout.Columns.Headings.Count)
            : layout;

    private static IReadOnlyList<string> Texts(HeadRecords records, int index, int rows) =>
        rows == 1 ? records[index].Cells : Joined(records[index].Cells, records[index + 1].Cells);

    private static RowLayout At(HeadRecords records, int index, Layout layout, IReadOnlyList<string> wanted)
    {
        var below = index + layout.HeadingRows;
        var hasUnits = records.Has(below) && (layout.UnitsRow ?? UnitsRow.IsOne(records[below].Cells));
        var units = hasUnits ? records[below] : null;
        var texts = Texts(records, index, layout.HeadingRows);
        var columns = HeadingRow.From(texts, units?.Cells);
        return new RowLayout(
            columns,
            texts,
            Preamble(records, index),
            [.. records.Skip(index).Take(layout.HeadingRows).Select(record => record.Raw)],
            units?.Raw,
            records[index].Line,
            records[below - (hasUnits ? 0 : 1)].NextLine,
            EndWithDelimiter(records.Skip(below + (hasUnits ? 1 : 0)), columns.Headings.Count),
            [.. wanted.Where(name => columns.Find(name) is null)]);
    }

    private static RowLayout WithoutHeadings(HeadRecords records, int preamble)
    {
        var below = records.Where(record => record.Line > preamble && !IsBlank(record)).ToList();
        var columns = below.Count == 0
            ? 1
            : below.GroupBy(record => record.Cells.Count).OrderByDescending(group => group.Count()).First().Key;
        var before = records.Count(record => record.Line <= preamble);
        return new RowLayout(
            HeadingRow.ByPosition(columns), [], Preamble(records, before), [], null, preamble + 1, preamble + 1, false, []);
    }

    private static IReadOnlyList<PreambleLine> Preamble(HeadRecords records, int count) =>
        [.. records.Take(count).Select(record => new PreambleLine(record.Line, record.Raw))];

    private static bool EndWithDelimiter(IEnumerable<HeadRecord> records, int columns)
    {
        var any = false;
        foreach (var record in records.Where(record => !IsBlank(record)))
        {
            if (record.Cells.Count != columns + 1 || record.Cells[^1].Length > 0)
                return false;
            any = true;
        }

        return any;
    }

    private static bool IsBlank(HeadRecord record) => record.Cells.All(string.IsNullOrWhiteSpace);
}
