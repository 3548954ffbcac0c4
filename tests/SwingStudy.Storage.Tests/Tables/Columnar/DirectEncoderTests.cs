using System.Globalization;
using Parquet.Meta;
using SwingStudy.Domain.Tables;
using SwingStudy.Storage.Tables.Columnar;
using SwingStudy.Storage.Tests.Support;

namespace SwingStudy.Storage.Tests.Tables.Columnar;

public class DirectEncoderTests
{
    private const int Rows = 3000;

    /// <summary>Values of which none repeats, so that no dictionary pays: each encoding of its own is written, and read by a library that knows nothing of its writer.</summary>
    public static TheoryData<string> Columns => [.. Cases.Keys];

    private static readonly Dictionary<string, Column> Cases = new(StringComparer.Ordinal)
    {
        ["numbers"] = new NumberColumn(Filled(row => row % 7 == 3 ? double.NaN : Math.Sin(row) * 1e3)),
        ["whole"] = new IntegerColumn(Filled<long?>(row => row % 11 == 5 ? null : (long)row * row * (row % 2 == 0 ? 1 : -1))),
        ["whole, none"] = new IntegerColumn(new long?[Rows]),
        ["moments"] = new InstantColumn(Filled(row => row % 13 == 1 ? InstantColumn.MissingMillis : 1_790_000_000_000 + (row * 7_123L) + (row % 5))),
        ["yes and no"] = new BooleanColumn(Filled<bool?>(row => row % 3 == 0 ? null : row % 2 == 0)),
        ["identifiers"] = new TextColumn(Filled(row => row % 9 == 2 ? null : string.Create(CultureInfo.InvariantCulture, $"0f3a9b2c11de-{row + 2}"))),
        ["words"] = new TextColumn(Filled<string?>(row => (row % 4) switch { 0 => $"axis{row}", 1 => $"axle{row}", 2 => $"Zürich{row}", _ => $"Züri球{row}" })),
        ["texts, none"] = new TextColumn(new string?[Rows]),
        ["lists"] = new NumberListColumn(Filled(row => row % 17 == 4 ? null : Enumerable.Range(0, row % 6).Select(i => i == 3 ? double.NaN : row + (i / 10.0)).ToArray())),
    };

    [Theory]
    [MemberData(nameof(Columns))]
    public void WhatIsWrittenIsRead(string name)
    {
        var column = Cases[name];
        using var study = new TemporaryStudy();
        var shape = new TableDefinition("values", "one value", [new("value", column.Kind, "Value")], null);
        var table = study.Tables.Table(shape);
        using var writer = table.NewFile(null, "any");
        var rows = new RowSet(shape, [column]);
        writer.Append(rows);
        table.Add(writer.Complete());
        Assert.Equal(rows.Text(), string.Join('\n', table.Read().Select(set => set.Text())));
    }

    [Theory]
    [InlineData("numbers", Encoding.PLAIN)]
    [InlineData("whole", Encoding.DELTA_BINARY_PACKED)]
    [InlineData("whole, none", Encoding.PLAIN)]
    [InlineData("moments", Encoding.DELTA_BINARY_PACKED)]
    [InlineData("yes and no", Encoding.PLAIN)]
    [InlineData("identifiers", Encoding.DELTA_BYTE_ARRAY)]
    [InlineData("texts, none", Encoding.PLAIN)]
    [InlineData("lists", Encoding.PLAIN)]
    public void EachKindHasItsEncoding(string name, Encoding encoding) => Assert.Equal([encoding, Encoding.RLE], Encoded(Cases[name]).Encodings);

    [Fact]
    public void TheBytesDoNotDependOnWhatWasEncodedBefore()
    {
        using var pages = new PageWriter();
        var encoder = new DirectEncoder(pages);
        foreach (var column in Cases.Values.Reverse())
            encoder.Encode(Definition(column), column);
        foreach (var column in Cases.Values)
            Assert.Equal(Encoded(column).Content.ToArray(), encoder.Encode(Definition(column), column).Content.ToArray());
    }

    [Fact]
    public void IdentifiersThatCountOnTakeOneOrTwoBytes() => Assert.InRange(Encoded(Cases["identifiers"]).Content.Length, 1, 2 * Rows);

    private static EncodedChunk Encoded(Column column)
    {
        using var pages = new PageWriter();
        return new DirectEncoder(pages).Encode(Definition(column), column);
    }

    private static ColumnDefinition Definition(Column column) => new("value", column.Kind, "Value");

    private static T[] Filled<T>(Func<int, T> value) => [.. Enumerable.Range(0, Rows).Select(value)];
}
