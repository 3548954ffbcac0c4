using System.Runtime.InteropServices;
using System.Text;
using Microsoft.Data.Analysis;
using SwingStudy.Domain.Tables;

namespace SwingStudy.Storage.Interchange;

/// <summary>Rows as a data frame of Microsoft.Data.Analysis.</summary>
internal static class FrameOfRows
{
    /// <summary>All rows of all sets, in order. Texts become Arrow text columns, the kind that turns into Arrow again.</summary>
    internal static DataFrame Of(TableDefinition table, IReadOnlyList<RowSet> sets) =>
        new(table.Columns.Select((column, position) => Frame(column, [.. sets.Select(set => set.Columns[position])])));

    private static DataFrameColumn Frame(ColumnDefinition column, IReadOnlyList<Column> parts) => column.Kind switch
    {
        ColumnKind.Text => Texts(column.Name, parts),
        ColumnKind.Number => new DoubleDataFrameColumn(column.Name,
            parts.Cast<NumberColumn>().SelectMany(part => part.Values).Select(value => double.IsNaN(value) ? (double?)null : value)),
        ColumnKind.Integer => new Int64DataFrameColumn(column.Name, parts.Cast<IntegerColumn>().SelectMany(part => part.Values)),
        ColumnKind.Boolean => new BooleanDataFrameColumn(column.Name, parts.Cast<BooleanColumn>().SelectMany(part => part.Values)),
        ColumnKind.Instant => new DateTimeDataFrameColumn(column.Name, parts.Cast<InstantColumn>().SelectMany(part => part.UnixMillis).Select(millis =>
            millis == InstantColumn.MissingMillis ? (DateTime?)null : DateTimeOffset.FromUnixTimeMilliseconds(millis).UtcDateTime)),
        _ => throw new ArgumentOutOfRangeException(nameof(column), column.Kind, "A data frame has no such column."),
    };

    private static ArrowStringDataFrameColumn Texts(string name, IReadOnlyList<Column> parts)
    {
        var texts = parts.Cast<TextColumn>().SelectMany(part => part.Values).ToArray();
        var bytes = new byte[texts.Sum(text => text is null ? 0 : Encoding.UTF8.GetByteCount(text))];
        var ends = new int[texts.Length + 1];
        var bits = new byte[(texts.Length + 7) / 8];
        for (var i = 0; i < texts.Length; i++)
        {
            ends[i + 1] = ends[i];
            if (texts[i] is not { } text)
                continue;
            ends[i + 1] += Encoding.UTF8.GetBytes(text, bytes.AsSpan(ends[i]));
            bits[i / 8] |= (byte)(1 << (i % 8));
        }

        return new ArrowStringDataFrameColumn(name, bytes, MemoryMarshal.AsBytes(ends.AsSpan()).ToArray(), bits, texts.Length, texts.Count(text => text is null));
    }
}
