using System.Globalization;
using SwingStudy.Domain.Declarations;
using SwingStudy.Domain.Sources;
using SwingStudy.Domain.Variables;
using SwingStudy.Ingestion.Suggest;

namespace SwingStudy.Ingestion.Tests.Suggest;

public sealed class SourceSuggesterTests(ITestOutputHelper output) : IDisposable
{
    private static readonly VariableDictionary Dictionary = DictionaryReader.Read(DictionaryFolder()).Value!;
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("suggest-");

    public static TheoryData<string> Layouts => [.. InventedLayout.All.Select(layout => layout.FileName)];

    /// <summary>Nine columns of ten: what is wrong costs a person one line to mend, and the comment behind it says so.</summary>
    [Fact]
    public void MostColumnsOfLayoutsNeverSeenAreMappedRight()
    {
        int right = 0, all = 0, wrong = 0;
        foreach (var layout in InventedLayout.All)
        {
            var found = Meanings(Suggest(layout).Mapping);
            foreach (var (heading, meaning) in layout.Columns)
            {
                var got = found.GetValueOrDefault(heading, "-");
                all++;
                right += got == meaning ? 1 : 0;
                wrong += got != meaning && got != "-" ? 1 : 0;
                if (got != meaning)
                    output.WriteLine($"{layout.FileName}: '{heading}' is {meaning}, drafted as {got}");
            }
        }

        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{right} of {all} columns right ({100.0 * right / all:F1} %), {wrong} mapped wrong, the others left out"));
        Assert.True(right >= 0.9 * all, $"{right} of {all}");
        Assert.True(wrong <= 0.03 * all, $"{wrong} of {all} mapped wrong");
    }

    [Theory]
    [MemberData(nameof(Layouts))]
    public void TheDraftReadsAsADeclarationThatSaysTheSame(string fileName)
    {
        var suggestion = Suggest(InventedLayout.All.Single(layout => layout.FileName == fileName));
        output.WriteLine(suggestion.Yaml);
        var path = Path.Combine(_folder.FullName, "draft.yaml");
        File.WriteAllText(path, suggestion.Yaml);
        var read = MappingReader.Read(path, Dictionary);
        Assert.True(read.Succeeded(out var mapping), string.Join('\n', read.Problems) + '\n' + suggestion.Yaml);
        Assert.Equal(Meanings(suggestion.Mapping), Meanings(mapping));
        Assert.Equal(suggestion.Mapping.Ignore, mapping.Ignore);
        Assert.Equal((suggestion.Mapping.Rows, suggestion.Mapping.Reader, suggestion.Mapping.Time.Format, suggestion.Mapping.Layout.HeadingRows), (mapping.Rows, mapping.Reader, mapping.Time.Format, mapping.Layout.HeadingRows));
    }

    [Theory]
    [MemberData(nameof(Layouts))]
    public void TheDraftOpensTheFileItWasMadeFrom(string fileName)
    {
        var layout = InventedLayout.All.Single(layout => layout.FileName == fileName);
        var mapping = Suggest(layout).Mapping;
        var outcome = SwingStudy.Ingestion.Readers.RecordReaders.Open(PathOf(layout), mapping);
        Assert.True(outcome.Succeeded(out var document), string.Join('\n', outcome.Problems));
        using (document)
            Assert.All(mapping.Values.Values.Where(_ => mapping.LongForm is null), value => Assert.NotNull(document.Columns.Find(value.Column!)));
    }

    [Theory]
    [MemberData(nameof(Layouts))]
    public void EachLineSaysHowSureItIsAndWhy(string fileName)
    {
        var lines = Suggest(InventedLayout.All.Single(layout => layout.FileName == fileName)).Lines;
        Assert.All(lines, line => Assert.True(line.Confidence is >= 0 and <= 1 && line.Reason.Length > 0, $"{line}"));
        Assert.Equal(lines.OrderBy(line => line.Confidence), lines);
    }

    [Fact]
    public void RowsOfAllKindsAreTold()
    {
        Assert.Equal(RowMeaning.Sessions, Of("log.xlsx").Mapping.Rows);
        Assert.Equal(RowMeaning.Moments, Of("ring.ndjson").Mapping.Rows);
        Assert.Equal(RowMeaning.Swings, Of("captura.csv").Mapping.Rows);
        Assert.Equal("Log", Of("log.xlsx").Mapping.Layout.Sheet);
        Assert.Equal("session.shots", Of("bay-api.json").Mapping.Layout.Records);
        Assert.Equal(2, Of("shots-2026.csv").Mapping.Layout.HeadingRows);
    }

    [Fact]
    public void FootersPracticeAndTokensAreProposed()
    {
        var german = Of("messung_box3.csv").Mapping;
        Assert.Equal(["Mittelwert"], german.NotData[0].Conditions[0].Is);
        Assert.Equal(("Bemerkung", "Probeschwung"), (german.Practice[0].Conditions[0].Column, german.Practice[0].Conditions[0].Is![0]));
        Assert.Equal(["---"], german.Missing);
        Assert.Equal(["-9999"], Of("radar export.csv").Mapping.Values["ball_speed"].Missing);
    }

    [Fact]
    public void TimesAreProposedWithTheOnlyPatternThatFits()
    {
        Assert.Equal("dd.MM.yyyy HH:mm:ss", Of("messung_box3.csv").Mapping.Time.Format);
        Assert.Equal("MM/dd/yyyy hh:mm:ss tt", Of("radar export.csv").Mapping.Time.Format);
        Assert.Equal("unix-ms", Of("ring.ndjson").Mapping.Time.Format);
        Assert.Equal("excel-serial", Of("log.xlsx").Mapping.Time.Format);
        Assert.Equal("iso", Of("bay-api.json").Mapping.Time.Format);
        Assert.Equal("date", Of("plates_20260603.csv").Mapping.Time.Parts[0].FileGroup);
    }

    [Fact]
    public void ADraftWithoutTimeSaysSoAndIsNoDeclarationYet()
    {
        var suggestion = Suggest(new InventedLayout("t.csv", "Shot,Ball speed (mph)\n1,120.5\n2,121.5\n"u8.ToArray(), new Dictionary<string, string>()));
        Assert.Equal(0, suggestion.Lines.Single(line => line.Key == "time.parts").Confidence);
        var path = Path.Combine(_folder.FullName, "draft.yaml");
        File.WriteAllText(path, suggestion.Yaml);
        Assert.Contains(MappingReader.Read(path, Dictionary).Problems, problem => problem.Found.Contains("parts", StringComparison.Ordinal));
    }

    [Fact]
    public void ADateThatFitsTwoPatternsIsLeftForAPerson()
    {
        var suggestion = Suggest(new InventedLayout("d.csv", "Shot,Player,Date,Time,Ball speed (mph)\n1,Kim,03/06/2026,10:00:00,120.5\n2,Kim,04/06/2026,10:01:00,121.5\n"u8.ToArray(), new Dictionary<string, string>()));
        Assert.Null(suggestion.Mapping.Time.Format);
        var line = suggestion.Lines.Single(line => line.Key == "time.format");
        Assert.Equal(0.1, line.Confidence);
        Assert.Contains("dd/MM/yyyy", line.Reason, StringComparison.Ordinal);
        Assert.Contains("MM/dd/yyyy", line.Reason, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("41.2 40.8 42.0", "m/s")]
    [InlineData("92.1 91.3 94.0", "[mi_i]/h")]
    [InlineData("148.3 146.9 151.2", "km/h")]
    public void WhereNoUnitIsToldTheValuesSayWhichIsUsual(string speeds, string unit)
    {
        var rows = string.Concat(speeds.Split(' ').Select((speed, i) => $"{i + 1},2026-06-03T10:0{i}:00Z,{speed}\n"));
        var mapping = Suggest(new InventedLayout("u.csv", System.Text.Encoding.UTF8.GetBytes("Shot,When,Club speed\n" + rows), new Dictionary<string, string>())).Mapping;
        Assert.Equal(unit, mapping.Values["club_head_speed"].Unit);
    }

    [Fact]
    public void AHeadingWhoseUnitContradictsAVariableIsNotMappedToIt() =>
        Assert.Empty(Suggest(new InventedLayout("c.csv", "Shot,When,Ball speed (deg)\n1,2026-06-03T10:00:00Z,45\n2,2026-06-03T10:01:00Z,46\n"u8.ToArray(), new Dictionary<string, string>())).Mapping.Values);

    [Fact]
    public void WhatCannotBeReadIsToldInsteadOfDrafted()
    {
        foreach (var bytes in (byte[][])[[], [0, 1, 2, 0, 4], "PK\u0003\u0004nonsense"u8.ToArray(), "{\"a\": "u8.ToArray()])
        {
            var path = Path.Combine(_folder.FullName, "bad");
            File.WriteAllBytes(path, bytes);
            var outcome = SourceSuggester.Suggest(path, Dictionary);
            Assert.False(outcome.Succeeded(out _));
            Assert.NotEmpty(outcome.Problems);
        }

        Assert.Equal("file-is-folder", SourceSuggester.Suggest(_folder.FullName, Dictionary).Problems[0].Code);
    }

    public void Dispose() => _folder.Delete(recursive: true);

    private static string DictionaryFolder()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "SwingStudy.sln")))
                return Path.Combine(folder.FullName, "data-dictionary");
        }

        throw new InvalidOperationException("The tests run outside the repository.");
    }

    /// <summary>What the draft makes of each column.</summary>
    private static Dictionary<string, string> Meanings(SourceMapping mapping)
    {
        var meanings = new Dictionary<string, string>(StringComparer.Ordinal);
        void Mean(string? column, string meaning)
        {
            if (column is not null)
                meanings.TryAdd(column, meaning);
        }

        Mean(mapping.Participant?.Column, "participant");
        Mean(mapping.Sequence?.Column, "sequence");
        Mean(mapping.Phase?.Column, "phase");
        Mean(mapping.LongForm?.NameColumn, "long.name");
        Mean(mapping.LongForm?.ValueColumn, "long.value");
        Mean(mapping.LongForm?.UnitColumn, "long.unit");
        foreach (var part in mapping.Time.Parts)
            Mean(part.Column, "time");
        foreach (var (name, field) in mapping.Values)
            Mean(field.Column, name);
        return meanings;
    }

    private SourceSuggestion Of(string fileName) => Suggest(InventedLayout.All.Single(layout => layout.FileName == fileName));

    private string PathOf(InventedLayout layout)
    {
        var path = Path.Combine(_folder.FullName, layout.FileName);
        File.WriteAllBytes(path, layout.Bytes);
        return path;
    }

    private SourceSuggestion Suggest(InventedLayout layout)
    {
        var outcome = SourceSuggester.Suggest(PathOf(layout), Dictionary, zone: "Europe/Lisbon");
        Assert.True(outcome.Succeeded(out var suggestion), string.Join('\n', outcome.Problems));
        return suggestion;
    }
}
