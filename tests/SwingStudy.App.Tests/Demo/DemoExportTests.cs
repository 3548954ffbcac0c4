using System.Globalization;
using System.IO.Compression;
using System.Text;
using System.Text.Json;
using ExcelDataReader;
using SwingStudy.App.Demo;

namespace SwingStudy.App.Tests.Demo;

public class DemoExportTests
{
    private static readonly (IReadOnlyList<DemoFile> Files, PlantedTruth Truth) Made = DemoStudy.Make(DemoStudy.DefaultSeed);

    [Fact]
    public void TheSameSeedGivesTheSameBytes()
    {
        var again = DemoStudy.Make(DemoStudy.DefaultSeed);

        Assert.Equal(Made.Files.Select(file => file.Path), again.Files.Select(file => file.Path));
        Assert.All(Made.Files.Zip(again.Files), pair => Assert.Equal(pair.First.Bytes, pair.Second.Bytes));
        Assert.Equal(Made.Truth.Counts, again.Truth.Counts);
    }

    [Fact]
    public void AnotherSeedGivesOtherSwings()
    {
        var other = DemoStudy.Make(7);

        Assert.NotEqual(Bay("messung_2026-03-02_09-00.csv", Made.Files), Bay("messung_2026-03-02_09-00.csv", other.Files));
    }

    [Fact]
    public void PathsAreDistinct() => Assert.Distinct(Made.Files.Select(file => file.Path));

    [Fact]
    public void TheBayIsWindows1252WithDecimalCommasPreambleUnitsRowAndFooter()
    {
        var bytes = Made.Files.First(file => file.Path.StartsWith(BayExport.Source, StringComparison.Ordinal)).Bytes;
        var lines = CodePagesEncodingProvider.Instance.GetEncoding(1252)!.GetString(bytes).Split("\r\n");

        Assert.Throws<DecoderFallbackException>(() => new UTF8Encoding(false, true).GetString(bytes));
        Assert.StartsWith("Messbericht „", lines[0], StringComparison.Ordinal);
        Assert.StartsWith("Lfd;Spieler;Datum;Uhrzeit;Schläger;", lines[4], StringComparison.Ordinal);
        Assert.Contains("[km/h];[km/h]", lines[5], StringComparison.Ordinal);
        Assert.Matches(@"^1;[^;]+;02\.03\.2026;09:\d\d:\d\d;Holz 1;\d+,\d;", lines[6]);
        Assert.StartsWith("Mittel;", lines[^3], StringComparison.Ordinal);
        Assert.Equal(["Ende des Berichts", ""], lines[^2..]);
    }

    [Fact]
    public void TheBayComesInPartsCopiesACorrectedExportAndForADayInMiles()
    {
        var bay = Made.Files.Where(file => file.Path.StartsWith(BayExport.Source, StringComparison.Ordinal)).ToList();
        var copies = bay.Where(file => file.Path.Contains("Kopie von", StringComparison.Ordinal)).ToList();
        var corrected = Assert.Single(bay, file => file.Path.Contains("_korrigiert", StringComparison.Ordinal));

        Assert.Equal(6, bay.Count(file => file.Path.Contains("_teil", StringComparison.Ordinal)));
        Assert.Equal(2, copies.Count);
        Assert.All(copies, copy => Assert.Equal(2, bay.Count(file => file.Bytes.SequenceEqual(copy.Bytes))));
        Assert.NotEqual(bay.Single(file => file.Path == corrected.Path.Replace("_korrigiert", "", StringComparison.Ordinal)).Bytes, corrected.Bytes);
        Assert.All(bay, file => Assert.Equal(
            file.Path.Contains("2026-03-19", StringComparison.Ordinal), Latin(file).Contains("[mph]", StringComparison.Ordinal)));
    }

    [Fact]
    public void SomeBayFilesHoldTwoPlayersAndSomeCountAnew()
    {
        var rows = Made.Files
            .Where(file => file.Path.StartsWith(BayExport.Source, StringComparison.Ordinal) && !file.Path.Contains("_korrigiert", StringComparison.Ordinal)
                && !file.Path.Contains("Kopie", StringComparison.Ordinal))
            .Select(SwingRows).ToList();

        Assert.Equal(4, rows.Count(file => file.Select(row => row[1]).Distinct().Count() == 2));
        Assert.True(rows.Count(file => file.Skip(1).Any(row => row[0] == "1")) >= 2);
    }

    [Fact]
    public void TheCoachTypesNamesInManyWaysAndTwiceADateAsText()
    {
        Encoding.RegisterProvider(CodePagesEncodingProvider.Instance);
        var file = Assert.Single(Made.Files, file => file.Path.StartsWith(CoachLog.Source, StringComparison.Ordinal));
        using var reader = ExcelReaderFactory.CreateReader(new MemoryStream(file.Bytes));
        var dates = new List<object?>();
        var names = new List<string>();
        while (reader.Read())
        {
            if (reader.Depth >= 3 && reader.GetValue(2) is string name)
            {
                dates.Add(reader.GetValue(0));
                names.Add(name);
            }
        }

        Assert.Equal(Made.Truth.Counts.Sessions, names.Count);
        Assert.Equal(2, dates.Count(date => date is string));
        Assert.Equal(names.Count - 2, dates.Count(date => date is DateTime));
        Assert.True(names.Distinct().Count() > 8);
        Assert.Equal(8, names.Select(name => name.Trim().ToUpperInvariant()).Distinct().Count());
    }

    [Fact]
    public void GateAndHeadbandAreJsonWithMissedFalseAndLooseReadings()
    {
        var counts = Made.Truth.Counts;
        var passes = Made.Files.Where(file => file.Path.StartsWith(GateExport.Source, StringComparison.Ordinal))
            .SelectMany(file => JsonDocument.Parse(file.Bytes).RootElement.GetProperty("passes").EnumerateArray()).ToList();
        var lines = Made.Files.Where(file => file.Path.StartsWith(HeadbandExport.Source, StringComparison.Ordinal))
            .SelectMany(file => Encoding.UTF8.GetString(file.Bytes).TrimEnd('\n').Split('\n')).ToList();

        Assert.Equal(counts.Swings + counts.PracticeSwings - counts.MissedByGate + counts.FalsePasses, passes.Count);
        Assert.InRange(counts.MissedByGate, 10, 80);
        Assert.All(lines, line => Assert.InRange(JsonDocument.Parse(line).RootElement.GetProperty("attention").GetInt32(), -1, 100));
        Assert.Contains(lines, line => line.Contains("\"attention\":-1,\"fit\":\"loose\"", StringComparison.Ordinal));
    }

    [Fact]
    public void TheBayHoldsEverySwingItDidNotMissAndTheCountedMisreads()
    {
        var counts = Made.Truth.Counts;
        var rows = Made.Files
            .Where(file => file.Path.StartsWith(BayExport.Source, StringComparison.Ordinal)
                && !file.Path.Contains("Kopie", StringComparison.Ordinal) && !file.Path.Contains("_korrigiert", StringComparison.Ordinal))
            .SelectMany(SwingRows).ToList();
        var hits = rows.Where(row => row[13] != "Probeschwung").ToList();

        Assert.Equal(counts.Swings - counts.MissedByBay, hits.Count);
        Assert.Equal(counts.PracticeSwings, rows.Count - hits.Count);
        Assert.Equal(counts.Misreads + counts.MendedMisreads, hits.Count(row => Number(row[7]) > 1.56));
        Assert.InRange((counts.Misreads + counts.MendedMisreads) / (double)hits.Count, 0.015, 0.055);
    }

    [Fact]
    public void TheWorkbookIsAZipOfWellFormedParts()
    {
        var file = Made.Files.Single(file => file.Path.EndsWith(".xlsx", StringComparison.Ordinal));
        using var zip = new ZipArchive(new MemoryStream(file.Bytes));

        Assert.All(zip.Entries, entry =>
        {
            using var stream = entry.Open();
            Assert.NotNull(System.Xml.Linq.XDocument.Load(stream).Root);
        });
    }

    private static byte[] Bay(string name, IReadOnlyList<DemoFile> files) => files.Single(file => file.Path == $"{BayExport.Source}/{name}").Bytes;

    private static string Latin(DemoFile file) => CodePagesEncodingProvider.Instance.GetEncoding(1252)!.GetString(file.Bytes);

    private static List<string[]> SwingRows(DemoFile file) =>
        [.. Latin(file).Split("\r\n").Skip(6).Where(line => line.Length > 0 && char.IsAsciiDigit(line[0])).Select(line => line.Split(';'))];

    private static double Number(string text) => double.Parse(text.Replace(',', '.'), CultureInfo.InvariantCulture);
}
