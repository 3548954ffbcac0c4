using System.Collections.Concurrent;
using SwingStudy.Domain.Tables;

namespace SwingStudy.Storage.Tables.Columnar;

/// <summary>Encodes a row group on its own, so that several can be encoded at once; the bytes depend on the rows alone.</summary>
internal static class GroupEncoder
{
    /// <summary>Idle page writers: setting up a compressor costs more than a small row group. As many live as groups were ever encoded at once.</summary>
    private static readonly ConcurrentBag<PageWriter> Idle = [];

    /// <summary>The rows as the bytes of a row group.</summary>
    /// <exception cref="ArgumentException">An infinite number, or a moment outside the years 1 to 9999.</exception>
    internal static EncodedGroup Encode(TableDefinition table, RowSet rows)
    {
        var bounds = new ColumnBounds[rows.Columns.Count];
        var chunks = new EncodedChunk[rows.Columns.Count];
        if (!Idle.TryTake(out var pages))
            pages = new PageWriter();
        var dictionaries = new DictionaryEncoder(pages, rows.Count);
        var direct = new DirectEncoder(pages);
        for (var i = 0; i < chunks.Length; i++)
        {
            var (definition, column) = (table.Columns[i], rows.Columns[i]);
            bounds[i] = new ColumnBounds();
            bounds[i].Add(column);
            if (bounds[i] is { Low: double.NegativeInfinity } or { High: double.PositiveInfinity })
                throw new ArgumentException($"Column {definition.Name} holds an infinite number in row {Array.FindIndex(((NumberColumn)column).Values, double.IsInfinity)}.");
            chunks[i] = dictionaries.TryEncode(definition, column) ?? direct.Encode(definition, column);
        }

        Idle.Add(pages);
        return new EncodedGroup(rows.Count, chunks, bounds);
    }
}
