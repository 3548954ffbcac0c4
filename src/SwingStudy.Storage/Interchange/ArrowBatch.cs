using Apache.Arrow;
using Apache.Arrow.Types;
using SwingStudy.Domain.Tables;
using Column = SwingStudy.Domain.Tables.Column;

namespace SwingStudy.Storage.Interchange;

/// <summary>Rows as an Arrow record batch.</summary>
public static class ArrowBatch
{
    private static readonly TimestampType Moment = new(TimeUnit.Millisecond, "UTC");
    private static readonly ListType Samples = new(new Field("item", DoubleType.Default, nullable: true));

    /// <summary>The schema of a table's batches.</summary>
    public static Schema SchemaOf(TableDefinition table) => new(table.Columns.Select(FieldOf), new Dictionary<string, string>
    {
        ["table"] = table.Name,
        ["row"] = table.RowMeaning,
    });

    /// <summary>The rows, copied.</summary>
    public static RecordBatch Of(RowSet rows) => new(SchemaOf(rows.Table), rows.Columns.Select(ArrayOf), rows.Count);

    private static Field FieldOf(ColumnDefinition column)
    {
        var metadata = new Dictionary<string, string> { ["title"] = column.Title };
        if (column.Unit is not null)
            metadata["unit"] = column.Unit;
        return new Field(column.Name, TypeOf(column.Kind), nullable: true, metadata);
    }

    private static IArrowType TypeOf(ColumnKind kind) => kind switch
    {
        ColumnKind.Text => StringType.Default,
        ColumnKind.Number => DoubleType.Default,
        ColumnKind.Integer => Int64Type.Default,
        ColumnKind.Boolean => BooleanType.Default,
        ColumnKind.Instant => Moment,
        ColumnKind.NumberList => Samples,
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Unknown kind of column."),
    };

    private static IArrowArray ArrayOf(Column column) => column switch
    {
        TextColumn text => new StringArray.Builder().AppendRange(text.Values).Build(),
        NumberColumn numbers => Numbers(numbers.Values),
        IntegerColumn integers => Integers(integers.Values),
        BooleanColumn booleans => Booleans(booleans.Values),
        InstantColumn instants => Instants(instants.UnixMillis),
        NumberListColumn lists => Lists(lists.Values),
        _ => throw new ArgumentOutOfRangeException(nameof(column), column.Kind, "Unknown kind of column."),
    };

    private static DoubleArray Numbers(double[] values)
    {
        var bits = new ArrowBuffer.BitmapBuilder(values.Length);
        var missing = 0;
        foreach (var value in values)
        {
            bits.Append(!double.IsNaN(value));
            missing += double.IsNaN(value) ? 1 : 0;
        }

        return new DoubleArray(new ArrowBuffer.Builder<double>(values.Length).Append(values.AsSpan()).Build(), bits.Build(), values.Length, missing, 0);
    }

    private static Int64Array Integers(long?[] values)
    {
        var builder = new Int64Array.Builder().Reserve(values.Length);
        foreach (var value in values)
            _ = value is { } present ? builder.Append(present) : builder.AppendNull();
        return builder.Build();
    }

    private static BooleanArray Booleans(bool?[] values)
    {
        var builder = new BooleanArray.Builder().Reserve(values.Length);
        foreach (var value in values)
            _ = value is { } present ? builder.Append(present) : builder.AppendNull();
        return builder.Build();
    }

    private static TimestampArray Instants(long[] unixMillis)
    {
        var bits = new ArrowBuffer.BitmapBuilder(unixMillis.Length);
        var moments = new ArrowBuffer.Builder<long>(unixMillis.Length);
        var missing = 0;
        foreach (var millis in unixMillis)
        {
            var present = millis != InstantColumn.MissingMillis;
            bits.Append(present);
            moments.Append(present ? millis : 0);
            missing += present ? 0 : 1;
        }

        return new TimestampArray(Moment, moments.Build(), bits.Build(), unixMillis.Length, missing, 0);
    }

    private static ListArray Lists(double[]?[] lists)
    {
        var bits = new ArrowBuffer.BitmapBuilder(lists.Length);
        var ends = new ArrowBuffer.Builder<int>(lists.Length + 1).Append(0);
        var length = 0;
        foreach (var list in lists)
        {
            bits.Append(list is not null);
            ends.Append(length += list?.Length ?? 0);
        }

        return new ListArray(Samples, lists.Length, ends.Build(), Numbers([.. lists.SelectMany(list => list ?? [])]), bits.Build(), lists.Count(list => list is null), 0);
    }
}
