using CsCheck;
using SwingStudy.Domain.Tables;
using SwingStudy.Storage.Tables;
using SwingStudy.Storage.Tests.Support;

namespace SwingStudy.Storage.Tests.Tables;

/// <summary>Whatever rows may hold comes back bit for bit, however they are cut into row groups.</summary>
public class RoundTripTests
{
    private static readonly Gen<string?> Text = Gen.Frequency(
        (1, AnyOf<string?>((string?)null)),
        (3, AnyOf<string?>("", "driver", "7-iron", "Zürich", "球", "🏌️", "a\nb", "\"quoted\"", "\0", "e\u0301", new string('x', 5000))),
        (2, Gen.Char.Where(c => !char.IsSurrogate(c)).Array[0, 40].Select(chars => (string?)new string(chars))));

    private static readonly Gen<double> Number = Gen.Frequency(
        (1, AnyOf(double.NaN)),
        (1, AnyOf(0.0, -0.0, double.MaxValue, double.MinValue, double.Epsilon, 1.0 / 3)),
        (2, Gen.Double[-1000, 1000].Select(value => Math.Round(value, 2))),
        (1, Gen.Double.Where(double.IsFinite)));

    private static readonly Gen<long?> Integer = Gen.Frequency(
        (1, AnyOf<long?>((long?)null)), (1, AnyOf<long?>(long.MinValue, long.MaxValue, 0, -1)), (2, Gen.Long.Select(value => (long?)value)),
        (3, Gen.Long[0, 200].Select(value => (long?)value)));

    private static readonly Gen<long> Instant = Gen.Frequency(
        (1, AnyOf(InstantColumn.MissingMillis)),
        (1, AnyOf(0L, -1L, DateTimeOffset.MinValue.ToUnixTimeMilliseconds(), DateTimeOffset.MaxValue.ToUnixTimeMilliseconds())),
        (3, Gen.Long[1_600_000_000_000, 1_900_000_000_000]));

    private static readonly Gen<bool?> Boolean = AnyOf<bool?>(true, false, null);

    private static readonly Gen<double[]?> List = Gen.Frequency((1, AnyOf<double[]?>((double[]?)null)), (3, Number.Array[0, 6].Select(list => (double[]?)list)));

    [Fact]
    public void RowsOfAllKindsComeBack() =>
        (from count in Gen.Int[0, 60]
         from cut in Gen.Int[0, count]
         from texts in Text.Array[count]
         from numbers in Number.Array[count]
         from integers in Integer.Array[count]
         from booleans in Boolean.Array[count]
         from instants in Instant.Array[count]
         from lists in List.Array[count]
         select (Rows: Set(count, texts, numbers, integers, booleans, instants, lists), Cut: cut)).Sample(
            sample =>
            {
                using var study = new TemporaryStudy();
                var table = study.Tables.Table(Some.Swings);
                using var writer = table.NewFile("P01", "any");
                var order = Enumerable.Range(0, sample.Rows.Count).ToArray();
                writer.Append(sample.Rows.Select(order.AsSpan(0, sample.Cut)));
                writer.Append(sample.Rows.Select(order.AsSpan(sample.Cut)));
                table.Add(writer.Complete());
                var back = study.Tables.Table(Some.Swings).Read().Where(rows => rows.Count > 0).Select(rows => rows.Text());
                Assert.Equal(sample.Rows.Text(), string.Join('\n', back));
                Assert.Equal(sample.Rows.Count, table.Files().Single().Rows);
            },
            iter: 60);

    [Fact]
    public void ARangeFindsWhatAFilterInMemoryFinds() =>
        (from numbers in Number.Array[0, 80]
         from low in Number.Where(double.IsFinite)
         from high in Number.Where(double.IsFinite)
         select (numbers, low, high)).Sample(
            sample =>
            {
                var (numbers, low, high) = sample;
                using var study = new TemporaryStudy();
                var shape = new TableDefinition("numbers", "one number", [new("value", ColumnKind.Number, "Value")], null);
                var table = study.Tables.Table(shape);
                using var writer = table.NewFile(null, "any");
                foreach (var part in numbers.Chunk(10))
                    writer.Append(new RowSet(shape, [new NumberColumn(part)]));
                table.Add(writer.Complete());
                Assert.Equal(numbers.Where(value => value >= low && value <= high), table.Read(ranges: [new RowRange("value", low, high)]).SelectMany(rows => rows.Numbers("value")));
            },
            iter: 40);

    [Fact]
    public void WhatCannotBeStoredIsRefused()
    {
        using var study = new TemporaryStudy();
        var table = study.Tables.Table(Some.Swings);
        Assert.Throws<ArgumentException>(() => Write(numbers: [double.PositiveInfinity], instants: [0]));
        Assert.Throws<ArgumentOutOfRangeException>(() => Write(numbers: [1], instants: [long.MaxValue]));
        Assert.Empty(Directory.GetFiles(table.Root, "*", SearchOption.AllDirectories));

        void Write(double[] numbers, long[] instants)
        {
            using var writer = table.NewFile("P01", "u");
            writer.Append(Set(1, ["a"], numbers, [1], [true], instants, [[1]]));
            writer.Complete();
        }
    }

    private static Gen<T> AnyOf<T>(params T[] values) => Gen.Int[0, values.Length - 1].Select(i => values[i]);

    private static RowSet Set(int count, string?[] texts, double[] numbers, long?[] integers, bool?[] booleans, long[] instants, double[]?[] lists) =>
        new(Some.Swings, [new TextColumn(texts), new TextColumn([.. Enumerable.Repeat("P01", count)]), new NumberColumn(numbers), new IntegerColumn(integers),
            new BooleanColumn(booleans), new InstantColumn(instants), new NumberListColumn(lists)]);
}
