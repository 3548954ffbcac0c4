using System.Globalization;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Tables;
using SwingStudy.Ingestion.Mapping.Rows;

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
        var places = new int[count];
        var stretches = file.Stretches(rows, places);
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
                "sequence" => Sequence(stretches, places),
                "recorded_at" => Instants(file, rows, 0),
                "struck_at" => Instants(file, rows, delay),
                "is_practice" => Practice(stretches, places),
                "original_sha256" => Same(original.ToString(), count),
                "original_row" => Lines(file, rows),
                "revision_of" when revisionOf is not null => new TextColumn(revisionOf),
                _ when numbers.TryGetValue(definition.Name, out var number) => Numbers(stretches, places, number, definition.Kind),
                _ when texts.TryGetValue(definition.Name, out var text) => Texts(stretches, places, text),
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

    private static IntegerColumn Sequence(List<(MappedBlock Block, int End)> stretches, int[] places)
    {
        var numbers = Gather(stretches, places, block => block.Sequence);
        return new IntegerColumn(Array.ConvertAll(numbers, number => double.IsNaN(number) ? (long?)null : (long)number));
    }

    private static InstantColumn Instants(MappedFile file, ReadOnlySpan<int> rows, long delay)
    {
        var millis = new long[rows.Length];
        for (var i = 0; i < rows.Length; i++)
            millis[i] = file.RecordedAt[rows[i]] - delay;
        return new InstantColumn(millis);
    }

    private static BooleanColumn Practice(List<(MappedBlock Block, int End)> stretches, int[] places)
    {
        var values = new bool?[places.Length];
        var i = 0;
        foreach (var (block, end) in stretches)
        {
            for (; i < end; i++)
                values[i] = block.Practice is { } practice && practice[places[i]];
        }

        return new BooleanColumn(values);
    }

    private static IntegerColumn Lines(MappedFile file, ReadOnlySpan<int> rows)
    {
        var lines = new long?[rows.Length];
        for (var i = 0; i < rows.Length; i++)
            lines[i] = file.Lines[rows[i]];
        return new IntegerColumn(lines);
    }

    private static TextColumn Texts(List<(MappedBlock Block, int End)> stretches, int[] places, int column)
    {
        var texts = new string?[places.Length];
        var i = 0;
        foreach (var (block, end) in stretches)
        {
            for (var values = block.Texts[column]; i < end; i++)
                texts[i] = values[places[i]];
        }

        return new TextColumn(texts);
    }

    private static Column Numbers(List<(MappedBlock Block, int End)> stretches, int[] places, int column, ColumnKind kind)
    {
        var numbers = Gather(stretches, places, block => block.Numbers[column]);
        return kind switch
        {
            ColumnKind.Number => new NumberColumn(numbers),
            ColumnKind.Integer => new IntegerColumn(Array.ConvertAll(numbers, number => double.IsNaN(number) ? (long?)null : (long)number)),
            ColumnKind.Boolean => new BooleanColumn(Array.ConvertAll(numbers, number => double.IsNaN(number) ? (bool?)null : number == 1)),
            _ => throw new InvalidOperationException($"A numeric column cannot fill {kind}."),
        };
    }

    private static double[] Gather(List<(MappedBlock Block, int End)> stretches, int[] places, Func<MappedBlock, PackedNumbers> column)
    {
        var numbers = GC.AllocateUninitializedArray<double>(places.Length);
        var i = 0;
        foreach (var (block, end) in stretches)
        {
            column(block).Pick(places.AsSpan(i, end - i), numbers.AsSpan(i));
            i = end;
        }

        return numbers;
    }

    private TextColumn Ids(MappedFile file, ReadOnlySpan<int> rows)
    {
        var ids = new string?[rows.Length];
        for (var i = 0; i < rows.Length; i++)
            ids[i] = IdOf(file.Lines[rows[i]]);
        return new TextColumn(ids);
    }
}
