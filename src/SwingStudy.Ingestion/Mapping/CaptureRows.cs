using System.Globalization;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Tables;

namespace SwingStudy.Ingestion.Mapping;

/// <summary>Makes rows of the captures table out of mapped rows.</summary>
/// <param name="captures">The table, with a column for each variable of the dictionary.</param>
/// <param name="original">Hash of the original.</param>
internal sealed class CaptureRows(TableDefinition captures, Sha256 original)
{
    private readonly string _short = original.Short;

    /// <summary>Rows of one player.</summary>
    /// <param name="file">The mapped file.</param>
    /// <param name="rows">Positions of taken rows, in file order.</param>
    /// <param name="participant">The player.</param>
    /// <param name="aliasHash">Keyed hash of the name in the file, by its position in <see cref="MappedFile.Aliases"/>.</param>
    /// <param name="revisionOf">The capture that each row replaces, or null; null when no row replaces any.</param>
    public RowSet Build(MappedFile file, ReadOnlySpan<int> rows, ParticipantId participant, IReadOnlyDictionary<int, string> aliasHash, string?[]? revisionOf)
    {
        var count = rows.Length;
        var mapping = file.Plan.Mapping;
        var delay = (long)Math.Round(mapping.Time.DelaySeconds * 1000);
        var numbers = file.Plan.Numbers.Select((column, position) => (column.Variable.Name, position)).ToDictionary(pair => pair.Name, pair => pair.position, StringComparer.Ordinal);
        var texts = file.Plan.Texts.Select((column, position) => (column.Variable.Name, position)).ToDictionary(pair => pair.Name, pair => pair.position, StringComparer.Ordinal);
        var missing = new Dictionary<ColumnKind, Column>();
        var columns = new Column[captures.Columns.Count];
        for (var i = 0; i < columns.Length; i++)
        {
            var definition = captures.Columns[i];
            columns[i] = definition.Name switch
            {
                "capture_id" => Ids(file, rows),
                "source" => Same(mapping.Source, count),
                "device" => Same(mapping.Device, count),
                "participant" => Same(participant.ToString(), count),
                "alias_hash" => AliasHashes(file, rows, aliasHash),
                "sequence" => Sequence(file, rows),
                "recorded_at" => Instants(file, rows, 0),
                "struck_at" => Instants(file, rows, delay),
                "is_practice" => Practice(file, rows),
                "original_sha256" => Same(original.ToString(), count),
                "original_row" => Lines(file, rows),
                "revision_of" when revisionOf is not null => new TextColumn(revisionOf),
                _ when numbers.TryGetValue(definition.Name, out var number) => Numbers(file, rows, number, definition.Kind),
                _ when texts.TryGetValue(definition.Name, out var text) => Texts(file, rows, text),
                _ => MissingOf(definition.Kind, count, missing),
            };
        }

        return new RowSet(captures, columns);
    }

    /// <summary>Identifier of the capture on a line.</summary>
    public string IdOf(int line) => string.Create(CultureInfo.InvariantCulture, $"{_short}-{line}");

    /// <summary>One column serves all that are missing: the arrays are never changed.</summary>
    private static Column MissingOf(ColumnKind kind, int count, Dictionary<ColumnKind, Column> missing)
    {
        if (!missing.TryGetValue(kind, out var column))
        {
            column = Column.Missing(kind, count);
            missing.Add(kind, column);
        }

        return column;
    }

    private static TextColumn Same(string text, int count)
    {
        var texts = new string?[count];
        Array.Fill(texts, text);
        return new TextColumn(texts);
    }

    private static TextColumn AliasHashes(MappedFile file, ReadOnlySpan<int> rows, IReadOnlyDictionary<int, string> aliasHash)
    {
        var hashes = new string?[rows.Length];
        for (var i = 0; i < rows.Length; i++)
            hashes[i] = aliasHash[file.AliasOf[rows[i]]];
        return new TextColumn(hashes);
    }

    private static IntegerColumn Sequence(MappedFile file, ReadOnlySpan<int> rows)
    {
        var values = new long?[rows.Length];
        for (var i = 0; i < rows.Length; i++)
            values[i] = file.Sequence[rows[i]] is var number and not long.MinValue ? number : null;
        return new IntegerColumn(values);
    }

    private static InstantColumn Instants(MappedFile file, ReadOnlySpan<int> rows, long delay)
    {
        var millis = new long[rows.Length];
        for (var i = 0; i < rows.Length; i++)
            millis[i] = file.RecordedAt[rows[i]] - delay;
        return new InstantColumn(millis);
    }

    private static BooleanColumn Practice(MappedFile file, ReadOnlySpan<int> rows)
    {
        var values = new bool?[rows.Length];
        for (var i = 0; i < rows.Length; i++)
            values[i] = file.IsPractice(rows[i]);
        return new BooleanColumn(values);
    }

    private static IntegerColumn Lines(MappedFile file, ReadOnlySpan<int> rows)
    {
        var lines = new long?[rows.Length];
        for (var i = 0; i < rows.Length; i++)
            lines[i] = file.Lines[rows[i]];
        return new IntegerColumn(lines);
    }

    private static TextColumn Texts(MappedFile file, ReadOnlySpan<int> rows, int column)
    {
        var texts = new string?[rows.Length];
        for (var i = 0; i < rows.Length;)
        {
            // Rows in file order stay in one block for long: its array is looked up once.
            var block = file.BlockOf[rows[i]];
            var values = file.Blocks[block].Texts[column];
            for (; i < rows.Length && file.BlockOf[rows[i]] == block; i++)
                texts[i] = values[file.RowOf[rows[i]]];
        }

        return new TextColumn(texts);
    }

    private static Column Numbers(MappedFile file, ReadOnlySpan<int> rows, int column, ColumnKind kind)
    {
        var numbers = GC.AllocateUninitializedArray<double>(rows.Length);
        for (var i = 0; i < rows.Length;)
        {
            var block = file.BlockOf[rows[i]];
            var values = file.Blocks[block].Numbers[column];
            for (; i < rows.Length && file.BlockOf[rows[i]] == block; i++)
                numbers[i] = values[file.RowOf[rows[i]]];
        }

        return kind switch
        {
            ColumnKind.Number => new NumberColumn(numbers),
            ColumnKind.Integer => new IntegerColumn([.. numbers.Select(number => double.IsNaN(number) ? (long?)null : (long)number)]),
            ColumnKind.Boolean => new BooleanColumn([.. numbers.Select(number => double.IsNaN(number) ? (bool?)null : number == 1)]),
            _ => throw new InvalidOperationException($"A numeric column cannot fill {kind}."),
        };
    }

    private TextColumn Ids(MappedFile file, ReadOnlySpan<int> rows)
    {
        var ids = new string?[rows.Length];
        for (var i = 0; i < rows.Length; i++)
            ids[i] = IdOf(file.Lines[rows[i]]);
        return new TextColumn(ids);
    }
}
