using SwingStudy.Domain.Declarations;
using SwingStudy.Domain.Sources;
using SwingStudy.Domain.Tests.Declarations.Support;

namespace SwingStudy.Domain.Tests.Declarations;

public sealed class MappingReaderTests : IDisposable
{
    internal const string Whole = """
        source: bay-strike
        title: Club-and-ball sensor, bay 1
        device: bay1-strike
        rows: swings
        reader: delimited
        files: 'bay1_(?<day>\d{8})_(?<clock>\d{4})(?<revision>_rev)?\.csv'
        text: { encoding: windows-1252, delimiter: ';', decimal: ',' }
        layout: { preamble: 3, headings: 1, units_row: true }
        missing: ['---']
        not_data:
          - label: average
            when: [{ column: No, is: [Average, Std] }]
        practice:
          - label: practice
            when: [{ column: Ball speed, missing: true }]
        bad_cells: reject-row
        participant: { column: Player }
        time:
          parts: [{ column: Day }, { column: Time }]
          format: dd.MM.yyyy HH:mm:ss
          zone: Europe/Lisbon
          delay_s: 0.25
        sequence: { column: No }
        values:
          club_head_speed: { column: Club speed, unit: '[mi_i]/h', scale: 2, offset: -1, negate: true, missing: ['0'] }
          launch_angle: { preamble: 'Angle (?<value>[-\d,.]+)', unit: deg }
          ball_speed: { column: Ball speed }
          surface: { column: Ground, words: { Gras: turf } }
          club: { file: day }
        ignore: [Remark]
        """;

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void AWholeMappingIsReadInEveryPart()
    {
        var mapping = Read(Whole);

        Assert.Equal("bay-strike", mapping.Source);
        Assert.Equal(RowMeaning.Swings, mapping.Rows);
        Assert.Equal(ReaderKind.Delimited, mapping.Reader);
        Assert.Equal(new TextFormat { Encoding = "windows-1252", Delimiter = ';', Decimal = ',' }, mapping.Text);
        Assert.Equal(new Layout { PreambleRows = 3, HeadingRows = 1, UnitsRow = true }, mapping.Layout);
        Assert.Equal(["---"], mapping.Missing);
        Assert.Equal(["Average", "Std"], Assert.Single(Assert.Single(mapping.NotData).Conditions).Is!);
        Assert.True(Assert.Single(Assert.Single(mapping.Practice).Conditions).Missing);
        Assert.Equal(BadCellPolicy.RejectRow, mapping.BadCells);
        Assert.Equal("Player", mapping.Participant!.Column);
        Assert.Equal(["Day", "Time"], mapping.Time.Parts.Select(part => part.Column!));
        Assert.Equal(0.25, mapping.Time.DelaySeconds);
        Assert.Equal(["club_head_speed", "launch_angle", "ball_speed", "surface", "club"], mapping.Values.Keys);
        var speed = mapping.Values["club_head_speed"];
        Assert.Equal(("Club speed", "[mi_i]/h", 2.0, -1.0, true, 25), (speed.Column, speed.Unit, speed.Scale, speed.Offset, speed.Negate, speed.Line));
        Assert.Equal("turf", mapping.Values["surface"].Words["gras"]);
        Assert.Equal("day", mapping.Values["club"].FileGroup);
        Assert.Equal(["Remark"], mapping.Ignore);
    }

    [Fact]
    public void AUnitOfAnotherDimensionIsAnErrorWithTheMappingsLine() => AssertProblem(
        Whole.Replace("unit: '[mi_i]/h'", "unit: yd"),
        "25: 'club_head_speed': '[yd_i]' measures length, 'm/s' measures speed; expected a unit of speed, such as m/s. "
        + "Correct the unit, or map the column to another variable. [unit-dimension]");

    [Fact]
    public void AnUnknownKeyIsToldWithTheNearestKnownOne() => AssertProblem(
        Whole.Replace("participant:", "particpant:"),
        "17: the mapping has the unknown key 'particpant'; expected one of files, rows, source, title, device, reader, text, layout, long, missing, not_data, "
        + "practice, bad_cells, participant, time, sequence, phase, values, ignore, consent, window. Did you mean 'participant'? [key-unknown]");

    [Fact]
    public void AnUnknownVariableIsToldWithTheNearestName() => AssertProblem(
        Whole.Replace("ball_speed:", "ball_sped:"),
        "27: 'ball_sped' is no variable of the dictionary small 1.0.0; expected the name of a variable. Did you mean 'ball_speed'? [variable-unknown]");

    [Fact]
    public void ATextWhereANumberBelongsIsToldWithItsMend() => AssertProblem(
        Whole.Replace("scale: 2", "scale: '2'"),
        "25: 'scale' is '2'; expected a number. Write it without quotes, with a point as the decimal sign. [value-type]");

    [Fact]
    public void ANumberWhereATextBelongsIsToldWithItsMend() => AssertProblem(
        Whole.Replace("missing: ['---']", "missing: [9999]"),
        "9: 'missing' is 9999; expected a text. Put it in quotes: '9999'. [value-type]");

    [Fact]
    public void AWordOutsideTheListIsToldWithTheNearest() => AssertProblem(
        Whole.Replace("bad_cells: reject-row", "bad_cells: reject-rows"),
        "16: 'bad_cells' is 'reject-rows'; expected one of reject-cell, reject-row. Did you mean 'reject-row'? [value-word]");

    [Fact]
    public void AMissingZoneIsAnErrorBecauseATimeWithoutZoneIsNoMoment() => AssertProblem(
        Whole.Replace("  zone: Europe/Lisbon\n", ""),
        "20: times written as 'dd.MM.yyyy HH:mm:ss' have no 'zone'; expected the IANA zone of the device's clock: a time without a zone is no moment. "
        + "Add 'zone: Europe/Lisbon' (or the device's zone) under 'time'. [zone-missing]");

    [Fact]
    public void AnUnknownZoneIsToldWithTheNearest() => AssertProblem(
        Whole.Replace("Europe/Lisbon", "Europe/Lisboa"),
        "21: 'Europe/Lisboa' is no time zone; expected an IANA name such as Europe/Lisbon. Did you mean 'Europe/Lisbon'? [zone-unknown]");

    [Fact]
    public void ABrokenPatternIsToldWithTheReasonOfTheEngine()
    {
        var problem = Assert.Single(Problems(Whole.Replace("(?<value>[-\\d,.]+)", "(?<value>[-\\d,.]+")));

        Assert.Equal("pattern-invalid", problem.Code);
        Assert.Equal(26, problem.Place.Row);
    }

    [Fact]
    public void APreamblePatternNeedsAGroupCalledValue() => AssertProblem(
        Whole.Replace("(?<value>[-\\d,.]+)", "[-\\d,.]+"),
        "26: the pattern 'Angle [-\\d,.]+' has no group 'value'; expected a named group (?<value>...). Put (?<value>...) around the part that is the value. [pattern-without-value]");

    [Fact]
    public void AGroupThatFilesDoNotNameIsTold() => AssertProblem(
        Whole.Replace("file: day", "file: days"),
        "29: 'files' has no group 'days'; expected one of day, clock, revision. Name it in 'files': (?<days>...). [file-group-unknown]");

    [Fact]
    public void AWordThatIsNotInTheCategoryIsTold() => AssertProblem(
        Whole.Replace("Gras: turf", "Gras: gras"),
        "28: 'gras' is no word of 'surface'; expected one of mat, turf. Use one of these words, or add the word to the dictionary. [category-word]");

    [Fact]
    public void AFieldStandsInExactlyOnePlace() => AssertProblem(
        Whole.Replace("{ column: Ball speed }", "{ column: Ball speed, constant: '5' }"),
        "27: 'ball_speed' names 2 places; expected exactly one of column, preamble, file, index, constant. Keep one of them. [field-place]");

    [Fact]
    public void AVariableOfAParticipantIsNotReadFromExports() => AssertProblem(
        Whole.Replace("club: { file: day }", "handedness: { column: Side }"),
        "29: 'handedness' describes a participant, not a swing or session; expected a variable of a swing or session. "
        + "Record it with 'swingstudy people add'. [variable-level]");

    [Fact]
    public void AllProblemsOfAFileAreToldInTheOrderOfItsLines()
    {
        var problems = Problems(Whole
            .Replace("ball_speed:", "ball_sped:")
            .Replace("rows: swings", "rows: swing")
            .Replace("decimal: ','", "decimal: ';;'"));

        Assert.Equal([(4, "value-word"), (7, "value-word"), (27, "variable-unknown")], problems.Select(problem => (problem.Place.Row!.Value, problem.Code)));
    }

    [Fact]
    public void MomentsNeedAWindowAndOthersHaveNone()
    {
        Assert.Equal("key-missing", Assert.Single(Problems(Whole.Replace("rows: swings", "rows: moments"))).Code);
        Assert.Equal("key-misplaced", Assert.Single(Problems(Whole + "\nwindow: { from_s: -3, to_s: 0 }")).Code);
        Assert.Equal(new MomentWindow(-3, 0), Read(Whole.Replace("rows: swings", "rows: moments") + "\nwindow: { from_s: -3, to_s: 0 }").Window);
    }

    [Fact]
    public void SessionsNeedAPlayerAndMayNameAPhase()
    {
        var sessions = Whole.Replace("rows: swings", "rows: sessions");

        Assert.Equal("Stage", Read(sessions + "\nphase: { column: Stage, words: { Intro: baseline } }").Phase!.Column);
        Assert.Equal("key-missing", Assert.Single(Problems(sessions.Replace("participant: { column: Player }\n", ""))).Code);
        Assert.Equal("key-misplaced", Assert.Single(Problems(Whole + "\nphase: { column: Stage }")).Code);
    }

    [Fact]
    public void ARepeatedKeyIsNoYaml() => Assert.Equal("yaml-syntax", Assert.Single(Problems(Whole + "\ntitle: Again")).Code);

    [Fact]
    public void BrokenYamlIsToldWithItsLine()
    {
        var problem = Assert.Single(Problems("source: bay\ntitle: [open\n"));

        Assert.Equal("yaml-syntax", problem.Code);
        Assert.NotNull(problem.Place.Row);
    }

    [Theory]
    [InlineData("source: bay\ntitle: [-]\n", "yaml-syntax", 2)]
    [InlineData("source: bay\ntitle: T\0\n", "yaml-character", 2)]
    [InlineData("source: bay\n\ntitle: a\ufeffb\n", "yaml-character", 3)]
    [InlineData("- a\n- b\n", "yaml-syntax", 1)]
    [InlineData("", "yaml-syntax", 1)]
    public void TextThatIsNoDeclarationIsToldWithItsLine(string yaml, string code, int line)
    {
        var problem = Assert.Single(Problems(yaml));

        Assert.Equal((code, line), (problem.Code, problem.Place.Row));
    }

    [Fact]
    public void BytesThatAreNoUtf8AreToldWithTheirLine()
    {
        var file = Path.Combine(_folder.Path, "latin.yaml");
        File.WriteAllBytes(file, [.. "source: bay\ntitle: Schl"u8, 0xe4, .. "ger\n"u8]);

        var problem = Assert.Single(MappingReader.Read(file, Some.Dictionary).Problems);
        Assert.Equal(("yaml-encoding", 2), (problem.Code, problem.Place.Row));
    }

    [Fact]
    public void AByteOrderMarkIsNoPartOfTheText() => Assert.Equal("bay-strike", Read("\ufeff" + Whole).Source);

    [Fact]
    public void AMissingFileIsAProblemAndNoFault()
    {
        Assert.False(MappingReader.Read(Path.Combine(_folder.Path, "none.yaml"), Some.Dictionary).Succeeded(out _));
        Assert.False(MappingReader.ReadAll(Path.Combine(_folder.Path, "none"), Some.Dictionary).Succeeded(out _));
    }

    [Fact]
    public void AFolderIsReadInTheOrderOfNames()
    {
        _folder.Write("b.yaml", Whole.Replace("bay-strike", "second"));
        _folder.Write("a.yaml", Whole.Replace("bay-strike", "first"));

        Assert.True(MappingReader.ReadAll(_folder.Path, Some.Dictionary).Succeeded(out var mappings));
        Assert.Equal(["first", "second"], mappings.Select(mapping => mapping.Source));
    }

    private SourceMapping Read(string yaml)
    {
        var read = MappingReader.Read(_folder.Write("m.yaml", yaml), Some.Dictionary);
        Assert.True(read.Succeeded(out var mapping), string.Join('\n', read.Problems));
        return mapping;
    }

    private IReadOnlyList<Domain.Problems.Problem> Problems(string yaml) =>
        MappingReader.Read(_folder.Write("m.yaml", yaml), Some.Dictionary).Problems;

    private void AssertProblem(string yaml, string expected)
    {
        var problem = Assert.Single(Problems(yaml));
        Assert.Equal(Path.Combine(_folder.Path, "m.yaml") + ":" + expected, problem.ToString());
    }
}
