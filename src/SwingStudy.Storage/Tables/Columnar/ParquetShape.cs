using Parquet.Schema;
using SwingStudy.Domain.Tables;

namespace SwingStudy.Storage.Tables.Columnar;

/// <summary>How the kinds of columns stand in Parquet.</summary>
internal static class ParquetShape
{
    private const string Element = "element";

    /// <summary>The schema of a table's files: every column may be missing.</summary>
    internal static ParquetSchema Schema(TableDefinition table) => new(table.Columns.Select(Field));

    /// <summary>One column. Instants are milliseconds: with finer units the library writes statistics in another unit than the values, and
    /// engines that trust them skip rows.</summary>
    internal static Field Field(ColumnDefinition column) => column.Kind switch
    {
        ColumnKind.Text => new DataField(column.Name, typeof(string), isNullable: true),
        ColumnKind.Number => new DataField(column.Name, typeof(double), isNullable: true),
        ColumnKind.Integer => new DataField(column.Name, typeof(long), isNullable: true),
        ColumnKind.Boolean => new DataField(column.Name, typeof(bool), isNullable: true),
        ColumnKind.Instant => new DateTimeDataField(column.Name, DateTimeFormat.Timestamp, true, DateTimeTimeUnit.Millis, isNullable: true),
        ColumnKind.NumberList => new ListField(column.Name, new DataField(Element, typeof(double), isNullable: true)),
        _ => throw new ArgumentOutOfRangeException(nameof(column), column.Kind, "Unknown kind of column."),
    };
}
