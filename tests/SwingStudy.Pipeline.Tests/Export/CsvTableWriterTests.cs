using NodaTime;
using SwingStudy.Domain.Tables;
using SwingStudy.Pipeline.Export;

namespace SwingStudy.Pipeline.Tests.Export;

public sealed class CsvTableWriterTests : IDisposable
{
    private static readonly TableDefinition Table = new("things", "one thing",
    [
        new("text", ColumnKind.Text, "Text"), new("number", ColumnKind.Number, "Number"), new("count", ColumnKind.Integer, "Count"),
        new("truth", ColumnKind.Boolean, "Truth"), new("moment", ColumnKind.Instant, "Moment"), new("list", ColumnKind.NumberList, "List"),
    ], null);

    private readonly string _file = Path.GetTempFileName();

    [Fact]
    public void EveryKindIsWrittenAsRfc4180AndIso8601Say()
    {
        var rows = new RowSetBuilder(Table);
        rows.Add(("text", "a \"b\", c\nd"), ("number", 0.1), ("count", -7), ("truth", true), ("moment", Instant.FromUtc(2026, 3, 29, 14, 5, 7)), ("list", new[] { 1.5, double.NaN }));
        Assert.Equal("text,number,count,truth,moment,list\n\"a \"\"b\"\", c\nd\",0.1,-7,true,2026-03-29T14:05:07.000Z,\"[1.5,null]\"\n", Written(rows.Build()));
    }

    [Fact]
    public void MissingValuesAreEmptyCellsAndAnEmptyTextIsQuoted()
    {
        var rows = new RowSetBuilder(Table);
        rows.Add();
        rows.Add(("text", ""));
        Assert.Equal("text,number,count,truth,moment,list\n,,,,,\n\"\",,,,,\n", Written(rows.Build()));
    }

    [Fact]
    public void ANumberReadsBackToTheSameNumber()
    {
        var rows = new RowSetBuilder(Table);
        double[] numbers = [1.0 / 3, 1e-300, -1.7976931348623157e308, 5e-324, 123456789.123456789];
        foreach (var number in numbers)
            rows.Add(("number", number));
        var cells = Written(rows.Build()).Split('\n').Skip(1).Take(numbers.Length).Select(line => double.Parse(line.Split(',')[1], System.Globalization.CultureInfo.InvariantCulture));
        Assert.Equal(numbers, cells);
    }

    public void Dispose() => File.Delete(_file);

    private string Written(RowSet rows)
    {
        using (var writer = new CsvTableWriter(_file, Table))
            writer.Append(rows);
        return File.ReadAllText(_file);
    }
}
