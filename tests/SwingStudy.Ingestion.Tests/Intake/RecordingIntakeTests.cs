using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.People;
using SwingStudy.Domain.Sources;
using SwingStudy.Domain.Tables;
using SwingStudy.Ingestion.Intake;
using SwingStudy.Ingestion.Tests.Recordings;
using SwingStudy.Ingestion.Tests.Support;

namespace SwingStudy.Ingestion.Tests.Intake;

/// <summary>Recordings from the inbox into the tables.</summary>
public sealed class RecordingIntakeTests : IDisposable
{
    private const string Samples = "0;1\n0.01;NaN\n0.02;3\n";
    private readonly TestStudy _study = new TestStudy(
        SomeRecording.Mapping with { Recording = SomeRecording.Rule with { Trigger = Some.Preamble("^Trigger: (?<value>.+)"), Purposes = [new PurposeRule(RecordingPurpose.Zero, "zero", null, null)] } },
        SomeRecording.Mapping with
        {
            Source = "listed",
            Files = @"([^/]+/)*r\d+\.txt",
            Index = new IndexTable("index.txt", "file", new TextFormat { Delimiter = '\t' }),
            Participant = new FieldSource { Index = "who", Missing = ["?"] },
            Time = new TimeRule { Parts = [new FieldSource { Index = "day" }, new FieldSource { Index = "at" }], Format = "dd-MM-yyyy HH:mm:ss.f", Zone = "Europe/Vienna" },
        }).With("P01", "Ada");

    public void Dispose() => _study.Dispose();

    [Fact]
    public void ARecordingBecomesACaptureCurvesAndEvents()
    {
        _study.Drop("plates/a.txt", "Trigger: 0.01\n" + SomeRecording.Head + Samples);
        var result = _study.RunOne();
        Assert.Equal((FileOutcome.Taken, 1L, 8L, 3L), (result.Outcome, result.Recordings, result.Counts.Read, result.Counts.Taken));
        Assert.Equal(["P01|swing|1759827940350|1759827940360|1"], _study.Captures("participant", "purpose", "recorded_at", "struck_at", "original_row"));
        var curve = Assert.Single(_study.Tables.Table(StudyTables.Curves).Read());
        Assert.Equal(("lead_force_y", "N", 100.0, -0.01), (curve.Texts("channel")[0], curve.Texts("unit")[0], curve.Numbers("sample_rate_hz")[0], curve.Numbers("t0_s")[0]));
        Assert.Equal([1, double.NaN, 3], ((NumberListColumn)curve["values"]).Values[0]!);
        var found = Assert.Single(_study.Tables.Table(StudyTables.CaptureEvents).Read());
        Assert.Equal(("trigger", 0.01), (found.Texts("event")[0], found.Numbers("time_s")[0]));
    }

    [Fact]
    public void ARecordingOfNobodyIsKeptAndAnUnknownNameHoldsTheFile()
    {
        _study.Drop("plates/zero.txt", "Trigger: 0\n" + SomeRecording.Head.Replace("Ada", "-", StringComparison.Ordinal) + Samples);
        _study.Drop("plates/b.txt", "Trigger: 0\n" + SomeRecording.Head.Replace("Ada", "Eva", StringComparison.Ordinal) + Samples);
        var results = _study.Run();
        Assert.Equal("alias-unknown", Assert.Single(results.Single(result => result.File == "plates/b.txt").Problems).Code);
        Assert.Equal(["|zero|"], _study.Captures("participant", "purpose", "struck_at"));
    }

    [Theory]
    [InlineData("right", "lead_force_y")]
    [InlineData("left", "trail_force_y")]
    public void TheRegistrysHandTellsWhichSideLeads(string hand, string channel)
    {
        var rule = SomeRecording.Rule with { Channels = new Dictionary<string, FieldSource> { ["left_force_y"] = Some.Column("Fz") } };
        using var study = new TestStudy(SomeRecording.Mapping with { Recording = rule }).With("P01", "Ada");
        study.Drop("plates/a.txt", SomeRecording.Head + Samples);
        Assert.Equal("handedness-unknown", Assert.Single(study.RunOne().Problems).Code);
        study.Registry.Act("test", "people.edit", act =>
        {
            act.Save(new PersonFacts(new ParticipantId("P01"), new Dictionary<string, string> { ["handedness"] = hand }));
            return "{}";
        });
        Assert.Equal(FileOutcome.Taken, study.RunOne().Outcome);
        Assert.Equal(channel, Assert.Single(study.Tables.Table(StudyTables.Curves).Read()).Texts("channel")[0]);
    }

    [Fact]
    public void TwiceIsOnceAndOtherValuesAreARevision()
    {
        _study.Drop("plates/a.txt", "Trigger: 0.01\n" + SomeRecording.Head + Samples);
        _study.RunOne();
        var before = _study.TableFiles();
        _study.Drop("plates/a.txt", "Trigger: 0.01\n" + SomeRecording.Head + Samples);
        Assert.Equal(FileOutcome.Duplicate, _study.RunOne().Outcome);
        _study.Drop("plates/again.txt", "Trigger: 0.01\n" + SomeRecording.Head + "\n" + Samples);
        Assert.Equal((0L, 3L), (_study.RunOne() is var repeat ? repeat.Recordings : -1, repeat.Counts.NotData["repeat"]));
        Assert.Equal(before, _study.TableFiles());
        _study.Drop("plates/mended.txt", "Trigger: 0.01\n" + SomeRecording.Head + Samples.Replace("NaN", "2", StringComparison.Ordinal));
        var revision = Assert.Single(_study.RunOne().Revisions);
        Assert.Equal("curves", revision.Variable);
        Assert.Contains(revision.Replaces, _study.Captures("revision_of"));
    }

    [Fact]
    public void SmallFilesOfOneRunShareADataFileOfATableThatNamesThem()
    {
        for (var i = 0; i < 3; i++)
            _study.Drop($"plates/{i}.txt", "Trigger: 0.01\n" + Head(i) + Samples);
        var hashes = _study.Run().Select(file => file.Hash!.Value.ToString()).ToList();
        foreach (var table in (TableDefinition[])[StudyTables.Captures(Some.Dictionary), StudyTables.Curves, StudyTables.CaptureEvents])
            Assert.Equal(hashes, Assert.Single(_study.Tables.Table(table).Files()).OriginalHashes);
        Assert.Equal(["1", "1", "1"], _study.Captures("original_row"));
    }

    [Fact]
    public void WhatWaitsInARunIsComparedWithWhatFollows()
    {
        _study.Drop("plates/1.txt", "Trigger: 0.01\n" + Head(0) + Samples);
        _study.Drop("plates/2 again.txt", "Trigger: 0.01\n" + Head(0) + "\n" + Samples);
        _study.Drop("plates/3 mended.txt", "Trigger: 0.01\n" + Head(0) + Samples.Replace("NaN", "2", StringComparison.Ordinal));
        var results = _study.Run();
        Assert.Equal([1L, 0L, 1L], results.Select(file => file.Recordings));
        Assert.Equal(results[0].Hash!.Value.Short + "-1", Assert.Single(results[2].Revisions).Replaces);
    }

    [Fact]
    public void ALongRecordingHasDataFilesOfItsOwn()
    {
        var samples = string.Concat(Enumerable.Range(0, (1 << 20) + 1).Select(i => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{i / 100.0};1\n")));
        _study.Drop("plates/1.txt", "Trigger: 0.01\n" + Head(0) + Samples);
        _study.Drop("plates/2.txt", "Trigger: 0.01\n" + Head(1) + samples);
        var results = _study.Run();
        Assert.Equal(results.Select(file => file.Hash!.Value.ToString()).Order(), _study.Tables.Table(StudyTables.Curves).Files().Select(file => file.Unit).Order());
        Assert.Equal([3, (1 << 20) + 1], _study.Tables.Table(StudyTables.Curves).Read().Select(rows => ((NumberListColumn)rows["values"]).Values[0]!.Length).Order());
    }

    private static string Head(int second) => SomeRecording.Head.Replace("40.350", $"4{second}.350", StringComparison.Ordinal);

    [Fact]
    public void ATableBesideTheFilesTellsTimeAndPlayer()
    {
        const string Text = "t;Fz\ns;N\n" + Samples;
        _study.Drop("listed/day1/r1.txt", Text);
        _study.Drop("listed/day1/r2.txt", "\n" + Text);
        Assert.All(_study.Run(), result => Assert.Equal("index-missing", Assert.Single(result.Problems).Code));
        _study.Drop("listed/day1/index.txt", "file\tday\tat\twho\nr1.txt\t07-10-2025\t11:05:40.350\tAda\nr2.txt\t07-10-2025\t11:06:40.350\t?\n");
        var results = _study.Run();
        Assert.All(results, result => Assert.Equal(FileOutcome.Taken, result.Outcome));
        Assert.Equal(["P01|1759827940350", "|1759828000350"], _study.Captures("participant", "recorded_at"));
        Assert.Equal(3, results.Single(result => result.File == "listed/day1/index.txt").Counts.NotData["index"]);
        Assert.Empty(_study.InboxFiles());
    }

    [Fact]
    public void AFileThatTheTableDoesNotListIsHeldUntilItDoes()
    {
        _study.Drop("listed/index.txt", "file\tday\tat\twho\nr1.txt\t07-10-2025\t11:05:40.350\tAda\n");
        _study.Drop("listed/r9.txt", "t;Fz\ns;N\n" + Samples);
        Assert.Equal("index-row-missing", Assert.Single(_study.Run().Single(result => result.File == "listed/r9.txt").Problems).Code);
        _study.Drop("listed/index.txt", "file\tday\tat\twho\nr1.txt\t07-10-2025\t11:05:40.350\tAda\nr9.txt\t07-10-2025\t11:07:40.350\tAda\n");
        Assert.All(_study.Run(), result => Assert.Equal(FileOutcome.Taken, result.Outcome));
        Assert.Single(_study.Captures("capture_id"));
    }

    [Fact]
    public void RejectedLinesAndCellsAreKeptWithTheirRawText()
    {
        _study.Drop("plates/a.txt", "Trigger: 0.01\n" + SomeRecording.Head + "0;1\n0.01;oops\n0.02;3;4;5\n0.03;4\n");
        var result = _study.RunOne();
        Assert.Equal((3L, 1L, 1L), (result.Counts.Taken, result.Counts.Rejected, result.RejectedCells));
        var capture = Assert.Single(_study.Captures("capture_id"));
        Assert.Equal([$"oops|unparsable|cell|{capture}", "0.02;3;4;5|cell-count|row|"], _study.Rejects("raw", "reason", "extent", "capture_id"));
    }

    [Fact]
    public void ATrialShowsTheRecordingsAndStoresNothing()
    {
        var path = _study.Drop("plates/a.txt", "Trigger: 0.01\n" + SomeRecording.Head + Samples);
        var trial = SourceTrials.TrySource(path, [_study.Context.Mappings[0]], Some.Dictionary);
        Assert.Equal(["1", "2025-10-07T09:05:40.350Z", "Ada", null, "swing", "0.01", "trigger 0.01", "1", "100", "0.03"], Assert.Single(trial.RowsAsMapped));
        Assert.Empty(_study.Captures("capture_id"));
    }
}
