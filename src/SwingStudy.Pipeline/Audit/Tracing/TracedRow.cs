using System.Globalization;
using NodaTime;
using SwingStudy.Domain.Tables;

namespace SwingStudy.Pipeline.Audit.Tracing;

/// <summary>One row of a table of the study.</summary>
/// <param name="Rows">The rows it is one of.</param>
/// <param name="Index">Its place among them.</param>
internal readonly record struct TracedRow(RowSet Rows, int Index)
{
    /// <summary>Name of the table.</summary>
    public string Table => Rows.Table.Name;

    /// <summary>Whether the table has the column and the row a value in it.</summary>
    public bool Has(string column)
    {
        var index = Index;
        return HasColumn(column) && !Rows[column].IsMissing(index);
    }

    /// <summary>Whether the table has the column.</summary>
    public bool HasColumn(string column) => Rows.Table.Columns.Any(known => known.Name == column);

    /// <summary>The text of a text column; null when missing.</summary>
    public string? Text(string column) => Rows.Texts(column)[Index];

    /// <summary>The value of any column as invariant text; null when missing.</summary>
    public string? Value(string column) => Rows[column].IsMissing(Index) ? null : Rows[column] switch
    {
        TextColumn texts => texts.Values[Index],
        NumberColumn numbers => numbers.Values[Index].ToString("R", CultureInfo.InvariantCulture),
        IntegerColumn integers => integers.Values[Index]?.ToString(CultureInfo.InvariantCulture),
        BooleanColumn booleans => booleans.Values[Index] == true ? "true" : "false",
        InstantColumn instants => Instant.FromUnixTimeMilliseconds(instants.UnixMillis[Index]).ToString(),
        NumberListColumn lists => string.Create(CultureInfo.InvariantCulture, $"{lists.Values[Index]!.Length} samples"),
        var other => throw new ArgumentOutOfRangeException(nameof(column), other.Kind, "Unknown kind of column."),
    };
}
