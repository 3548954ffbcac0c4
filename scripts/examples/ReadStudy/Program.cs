// Reads the tables of a study from .NET: as data frames, as Arrow record batches, and as they were at an earlier version.
// Usage: dotnet run --project scripts/examples/ReadStudy -- STUDY [TABLE [VERSION]]
using System.Globalization;
using Microsoft.Data.Analysis;
using SwingStudy.Domain.Tables;
using SwingStudy.Storage;

if (args.Length == 0)
{
    Console.Error.WriteLine("usage: ReadStudy STUDY [TABLE [VERSION]]");
    return 2;
}

var study = Study.Open(args[0]);
if (args.Length == 1)
{
    foreach (var name in study.Tables)
    {
        var newest = study.Table(name);
        Console.WriteLine($"{name}: version {newest.Version}, {newest.Rows([newest.Definition.Columns[0].Name]).Sum(rows => (long)rows.Count)} rows of {newest.Definition.RowMeaning}");
    }

    return 0;
}

var table = study.Table(args[1], args.Length > 2 ? long.Parse(args[2], CultureInfo.InvariantCulture) : null);

// Titles and units travel with the columns.
foreach (var column in table.Definition.Columns)
    Console.WriteLine($"{column.Name}: {column.Title}{(column.Unit is null ? "" : $" [{column.Unit}]")}");

// Arrow streams: nothing but the columns asked for is read, a row group at a time.
var numbers = table.Definition.Columns.Where(column => column.Kind == ColumnKind.Number).Select(column => column.Name).ToList();
var batches = table.ToArrow(numbers).ToList();
Console.WriteLine($"Arrow: {batches.Sum(batch => (long)batch.Length)} rows in {batches.Count} record batches");

// A data frame holds it all in memory.
DataFrame frame = table.ToDataFrame();
Console.WriteLine(frame.Head(5).ToString());
foreach (var name in numbers)
{
    var present = frame[name].DropNulls();
    Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"mean of {name}: {(present.Length == 0 ? "none" : present.Mean())} (n = {present.Length})"));
}

return 0;
