using System.Buffers;
using Parquet;
using Parquet.Schema;

namespace SwingStudy.Storage.Tables.Columnar;

/// <summary>A column chunk as it lies in the file: the values that are there, and the levels that tell where they belong.</summary>
/// <typeparam name="T">Type of values; texts are <c>ReadOnlyMemory&lt;char&gt;</c>.</typeparam>
internal sealed class RawColumn<T> : IDisposable
    where T : struct
{
    private readonly DataField _field;
    private readonly int _entries;
    private readonly T[] _values;
    private readonly int[] _definition;
    private readonly int[] _repetition;

    private RawColumn(DataField field, int entries)
    {
        (_field, _entries, _values) = (field, entries, ArrayPool<T>.Shared.Rent(entries));
        _definition = field.MaxDefinitionLevel > 0 ? ArrayPool<int>.Shared.Rent(entries) : [];
        _repetition = field.MaxRepetitionLevel > 0 ? ArrayPool<int>.Shared.Rent(entries) : [];
    }

    /// <summary>The values, packed: entries without one have no place.</summary>
    public ReadOnlySpan<T> Values => _values.AsSpan(0, _entries);

    /// <summary>Definition level of each entry; empty for a column in which nothing can be missing.</summary>
    public ReadOnlySpan<int> DefinitionLevels => _definition.Length == 0 ? [] : _definition.AsSpan(0, _entries);

    /// <summary>Repetition level of each entry; empty for a column without lists.</summary>
    public ReadOnlySpan<int> RepetitionLevels => _repetition.Length == 0 ? [] : _repetition.AsSpan(0, _entries);

    /// <summary>Reads a column of a row group.</summary>
    public static RawColumn<T> Read(ParquetRowGroupReader group, DataField field)
    {
        var entries = checked((int)(group.GetMetadata(field)?.MetaData?.NumValues ?? throw new InvalidDataException($"The file has no values of column '{field.Name}'.")));
        var column = new RawColumn<T>(field, entries);
        group.ReadRawAsync(field, column._values.AsMemory(0, entries), Levels(column._definition, entries), Levels(column._repetition, entries), CancellationToken.None).AsTask().GetAwaiter().GetResult();
        return column;
    }

    /// <summary>Whether an entry holds a value.</summary>
    public bool HasValue(int entry) => _definition.Length == 0 || _definition[entry] == _field.MaxDefinitionLevel;

    /// <inheritdoc/>
    public void Dispose()
    {
        ArrayPool<T>.Shared.Return(_values);
        foreach (var levels in new[] { _definition, _repetition }.Where(levels => levels.Length > 0))
            ArrayPool<int>.Shared.Return(levels);
    }

    private static Memory<int>? Levels(int[] levels, int entries) => levels.Length == 0 ? (Memory<int>?)null : levels.AsMemory(0, entries);
}
