using Parquet.Meta;
using Parquet.Schema;
using SwingStudy.Domain.Tables;
using ParquetType = Parquet.Meta.Type;

namespace SwingStudy.Storage.Tables.Columnar;

/// <summary>How the kinds of columns stand in Parquet: every column may be missing; instants are microseconds in UTC, as Delta has them.</summary>
internal static class ParquetShape
{
    /// <summary>Name of a list's values.</summary>
    internal const string Element = "element";

    private const long MicrosPerMilli = 1000;

    /// <summary>Earliest and latest moment that every reader of the files can hold: the years 1 to 9999.</summary>
    private static readonly long Earliest = DateTimeOffset.MinValue.ToUnixTimeMilliseconds(), Latest = DateTimeOffset.MaxValue.ToUnixTimeMilliseconds();

    /// <summary>The schema under which the library reads. Instants are plain integers to it.</summary>
    internal static ParquetSchema EncodedSchema(TableDefinition table) => new(table.Columns.Select(EncodedField));

    /// <summary>The schema that the file declares.</summary>
    internal static IReadOnlyList<ParquetElement> Elements(TableDefinition table) =>
        [new ParquetElement("schema", null, null, table.Columns.Count), .. table.Columns.SelectMany(Elements)];

    /// <summary>A moment as the file holds it.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the years 1 to 9999.</exception>
    internal static long Micros(long unixMillis) => unixMillis >= Earliest && unixMillis <= Latest
        ? unixMillis * MicrosPerMilli
        : throw new ArgumentOutOfRangeException(nameof(unixMillis), unixMillis, "A moment must lie in the years 1 to 9999.");

    /// <summary>The moment that a file holds.</summary>
    internal static long Millis(long unixMicros) => unixMicros / MicrosPerMilli;

    private static Field EncodedField(ColumnDefinition column) => column.Kind switch
    {
        ColumnKind.Text => new DataField(column.Name, typeof(string), isNullable: true),
        ColumnKind.Number => new DataField(column.Name, typeof(double), isNullable: true),
        ColumnKind.Integer or ColumnKind.Instant => new DataField(column.Name, typeof(long), isNullable: true),
        ColumnKind.Boolean => new DataField(column.Name, typeof(bool), isNullable: true),
        ColumnKind.NumberList => new ListField(column.Name, new DataField(Element, typeof(double), isNullable: true)),
        _ => throw new ArgumentOutOfRangeException(nameof(column), column.Kind, "Unknown kind of column."),
    };

    private static IEnumerable<ParquetElement> Elements(ColumnDefinition column) => column.Kind switch
    {
        ColumnKind.Text => [Leaf(column, ParquetType.BYTE_ARRAY, ConvertedType.UTF8, LogicalKind.Text)],
        ColumnKind.Number => [Leaf(column, ParquetType.DOUBLE)],
        ColumnKind.Integer => [Leaf(column, ParquetType.INT64)],
        ColumnKind.Boolean => [Leaf(column, ParquetType.BOOLEAN)],
        ColumnKind.Instant => [Leaf(column, ParquetType.INT64, ConvertedType.TIMESTAMP_MICROS, LogicalKind.Timestamp)],
        ColumnKind.NumberList =>
        [
            new(column.Name, null, FieldRepetitionType.OPTIONAL, 1, ConvertedType.LIST, LogicalKind.List),
            new("list", null, FieldRepetitionType.REPEATED, 1),
            new(Element, ParquetType.DOUBLE, FieldRepetitionType.OPTIONAL),
        ],
        _ => throw new ArgumentOutOfRangeException(nameof(column), column.Kind, "Unknown kind of column."),
    };

    private static ParquetElement Leaf(ColumnDefinition column, ParquetType type, ConvertedType? converted = null, LogicalKind logical = LogicalKind.None) =>
        new(column.Name, type, FieldRepetitionType.OPTIONAL, 0, converted, logical);
}
