using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Sources;
using SwingStudy.Ingestion.Intake;
using SwingStudy.Ingestion.Tests.Support;
using SwingStudy.Storage.Registry;

namespace SwingStudy.Ingestion.Tests.Intake;

public sealed class StudyIntakeTests
{
    private const string Headings = "No;Player;When;Club speed\n";

    private static string Rows(string player, params (int No, string Clock, string Speed)[] rows) =>
        string.Concat(rows.Select(row => $"{row.No};{player};07.09.2026 {row.Clock};{row.Speed}\n"));

    [Fact]
    public void AFileIsTakenWithItsOriginalAndLeavesTheInbox()
    {
        using var study = new TestStudy(Some.Mapping).With("P01", "Fern");
        study.Drop("bay/a.csv", Headings + Rows("fern", (1, "10:00:00", "90,0"), (2, "10:01:00", "---"), (3, "10:02:00", "x")));
        var result = study.RunOne();
        Assert.Equal(FileOutcome.Taken, result.Outcome);
        Assert.Equal((4, 3, 0, 1), (result.Counts.Read, result.Counts.Taken, result.Counts.Rejected, result.Counts.NotDataTotal));
        Assert.Empty(study.InboxFiles());
        var hash = result.Hash!.Value;
        Assert.Equal([$"{hash.Short}-2|bay|bay-1|P01|1|2|40.2336|false", $"{hash.Short}-3|bay|bay-1|P01|2|3||false", $"{hash.Short}-4|bay|bay-1|P01|3|4||false"],
            study.Captures("capture_id", "source", "device", "participant", "sequence", "original_row", "club_speed", "is_practice"));
        Assert.Equal([$"{hash}|4|x|unparsable|cell|Club speed|club_speed|{hash.Short}-4"],
            study.Rejects("original_sha256", "original_row", "raw", "reason", "extent", "column", "variable", "capture_id"));
        var record = study.Registry.IntakeFile(hash)!;
        Assert.Equal((IntakeStatus.Taken, 4, 3, "utf-8", ";", ","), (record.Status, record.LinesRead, record.RowsTaken, record.Encoding, record.Delimiter, record.DecimalMark));
        Assert.True(File.Exists(Path.Combine(study.Folder.Originals, hash.ToString()[..2], hash + ".bin")));
    }

    [Fact]
    public void TheSameBytesAgainUnderAnotherNameChangeNothing()
    {
        using var study = new TestStudy(Some.Mapping).With("P01", "Fern");
        var text = Headings + Rows("Fern", (1, "10:00:00", "90,0"));
        study.Drop("bay/a.csv", text);
        study.Drop("bay/copy of a.csv", text);
        Assert.Equal([FileOutcome.Taken, FileOutcome.Duplicate], study.Run().Select(file => file.Outcome));
        var before = study.TableFiles();
        study.Drop("bay/b.csv", text);
        Assert.Equal(FileOutcome.Duplicate, study.RunOne().Outcome);
        Assert.Equal(before, study.TableFiles());
        Assert.Equal(2, study.Registry.IntakeCounts().Duplicates);
        Assert.Empty(study.InboxFiles());
    }

    [Fact]
    public void TwoPlayersInOneFileAreTakenApart()
    {
        using var study = new TestStudy(Some.Mapping).With("P01", "Fern").With("P02", "Moss");
        study.Drop("bay/a.csv", Headings + Rows("Fern", (1, "10:00:00", "90")) + Rows("Moss", (1, "10:00:30", "80")) + Rows("Fern", (2, "10:01:00", "91")));
        study.RunOne();
        Assert.Equal(["P01|1", "P02|1", "P01|2"], study.Captures("participant", "sequence"));
    }

    [Fact]
    public void AnUnknownNameHoldsTheFileWithASuggestionUntilItIsKnown()
    {
        using var study = new TestStudy(Some.Mapping).With("P01", "Zoë K.").With("P02", "Moss");
        study.Drop("bay/a.csv", Headings + Rows("Zoe K.", (1, "10:00:00", "90")));
        var held = study.RunOne();
        Assert.Equal(FileOutcome.Held, held.Outcome);
        var problem = Assert.Single(held.Problems);
        Assert.Equal("alias-unknown", problem.Code);
        Assert.Contains("P01", problem.Mend, StringComparison.Ordinal);
        Assert.DoesNotContain("P02", problem.Mend, StringComparison.Ordinal);
        Assert.Empty(study.InboxFiles());
        Assert.Empty(study.Captures("capture_id"));
        Assert.Empty(study.FilesHolding("Zoe K."));
        Assert.Equal(FileOutcome.Held, study.RunOne().Outcome);
        study.Identities.Add(new ParticipantId("P01"), "Zoe K.");
        Assert.Equal(FileOutcome.Taken, study.RunOne().Outcome);
        Assert.Equal(["P01|1"], study.Captures("participant", "sequence"));
        Assert.Empty(study.Run());
    }

    [Fact]
    public void PartsThatOverlapWithTheSameValuesAreMerged()
    {
        using var study = new TestStudy(Some.Mapping).With("P01", "Fern");
        study.Drop("bay/a part1.csv", Headings + Rows("Fern", (1, "10:00:00", "90"), (2, "10:01:00", "91"), (3, "10:02:00", "92")));
        study.Drop("bay/a part2.csv", Headings + Rows("Fern", (3, "10:02:00", "92"), (4, "10:03:00", "93")));
        var results = study.Run();
        Assert.Equal([3, 1], results.Select(file => file.Counts.Taken));
        Assert.Equal(1, results[1].Counts.NotData["repeat"]);
        Assert.Equal(["1", "2", "3", "4"], study.Captures("sequence"));
    }

    [Fact]
    public void PartsThatContradictEachOtherAreHeldUntilAPersonDecides()
    {
        using var study = new TestStudy(Some.Mapping).With("P01", "Fern");
        study.Drop("bay/a part1.csv", Headings + Rows("Fern", (1, "10:00:00", "90"), (2, "10:01:00", "91"), (3, "10:02:00", "92")));
        study.Drop("bay/a part2.csv", Headings + Rows("Fern", (3, "10:02:00", "95"), (4, "10:03:00", "93")));
        var results = study.Run();
        Assert.Equal([FileOutcome.Taken, FileOutcome.Held], results.Select(file => file.Outcome));
        Assert.Equal("overlap-differs", Assert.Single(results[1].Problems).Code);
        Decide(study, "include", results[1].Hash!.Value);
        Assert.Equal(FileOutcome.Taken, study.RunOne().Outcome);
        Assert.Equal($"3|{results[0].Hash!.Value.Short}-4", study.Captures("sequence", "revision_of").Single(row => row.StartsWith("3|", StringComparison.Ordinal) && row.Length > 2));
    }

    [Fact]
    public void AFileThatAPersonLeavesOutIsNotTriedAgain()
    {
        using var study = new TestStudy(Some.Mapping).With("P01", "Fern");
        study.Drop("bay/a.csv", Headings + Rows("Nobody", (1, "10:00:00", "90")));
        Decide(study, "exclude", study.RunOne().Hash!.Value);
        Assert.Equal(FileOutcome.LeftOut, study.RunOne().Outcome);
        Assert.Empty(study.Run());
    }

    [Fact]
    public void ACorrectedExportRevisesWhatChangedAndShowsTheDifference()
    {
        using var study = new TestStudy(Some.Mapping).With("P01", "Fern");
        study.Drop("bay/a.csv", Headings + Rows("Fern", (1, "10:00:00", "90"), (2, "10:01:00", "45"), (3, "10:02:00", "92")));
        var first = study.RunOne();
        study.Drop("bay/a_again.csv", Headings + Rows("Fern", (1, "10:00:00", "90"), (2, "10:01:00", "91"), (3, "10:02:00", "92")));
        var second = study.RunOne();
        Assert.Equal((1, 2), (second.Counts.Taken, second.Counts.NotData["repeat"]));
        var revision = Assert.Single(second.Revisions);
        Assert.Equal((3, $"{first.Hash!.Value.Short}-3", "club_speed", "20.1168", "40.68064"), (revision.Row, revision.Replaces, revision.Variable, revision.Before, revision.After));
        Assert.Equal(new HashSet<string> { "1||40.2336", "2||20.1168", $"2|{first.Hash.Value.Short}-3|40.68064", "3||41.12768" },
            study.Captures("sequence", "revision_of", "club_speed").ToHashSet());

        // A third export is compared with what stands, not with what was replaced.
        study.Drop("bay/a_third.csv", Headings + Rows("Fern", (1, "10:00:00", "90"), (2, "10:01:00", "91"), (3, "10:02:00", "92"), (4, "10:03:00", "93")));
        var third = study.RunOne();
        Assert.Equal((1, 3), (third.Counts.Taken, third.Counts.NotData["repeat"]));
    }

    [Fact]
    public void CorrectedExportsComeAfterTheOthersWhateverTheirNames()
    {
        using var study = new TestStudy(Some.Mapping with { Files = @"(?<revision>aa_)?.*\.csv" }).With("P01", "Fern");
        study.Drop("bay/aa_b.csv", Headings + Rows("Fern", (1, "10:00:00", "91"), (2, "10:01:00", "92")));
        study.Drop("bay/b.csv", Headings + Rows("Fern", (1, "10:00:00", "90"), (2, "10:01:00", "92")));
        Assert.Equal(["bay/b.csv", "bay/aa_b.csv"], study.Run().Select(file => file.File));
        Assert.Equal(2, study.Captures("revision_of").Count(id => id.Length == 0));
    }

    [Fact]
    public void NumbersThatRestartAreNoIdentity()
    {
        using var study = new TestStudy(Some.Mapping).With("P01", "Fern");
        study.Drop("bay/a.csv", Headings + Rows("Fern", (1, "10:00:00", "90"), (2, "10:01:00", "91"), (1, "10:05:00", "92"), (2, "10:06:00", "93")));
        Assert.Equal(4, study.RunOne().Counts.Taken);
        Assert.Equal(["1", "2", "1", "2"], study.Captures("sequence"));
    }

    [Fact]
    public void TheOrderOfArrivalDoesNotMatter()
    {
        (string, string)[] files =
        [
            ("bay/s2.csv", Headings + Rows("Fern", (1, "10:00:00", "90"), (2, "10:01:00", "91"))),
            ("bay/s10.csv", Headings + Rows("Fern", (2, "10:01:00", "91"), (3, "10:02:00", "x"))),
            ("bay/s11.csv", Headings + Rows("Moss", (1, "10:00:00", "80"))),
        ];
        using var other = new TestStudy(Some.Mapping).With("P01", "Fern").With("P02", "Moss");
        using var copy = other.Copy(threads: 1);
        using var same = other.Copy(threads: 2);
        foreach (var (name, text) in files)
            same.Drop(name, text);
        Assert.Equal(["bay/s2.csv", "bay/s10.csv", "bay/s11.csv"], same.Run().Select(file => file.File));
        foreach (var (name, text) in files.Reverse())
            copy.Drop(name, text);
        copy.Run();
        Assert.Equal(3, same.TableFiles().Count); // captures of two players, and rejects
        Assert.Equal(same.TableFiles(), copy.TableFiles());
    }

    [Theory]
    [InlineData("", "file-empty")]
    [InlineData("\n\n", null)]
    public void AFileWithoutRowsIsNotTakenAndNotLost(string text, string? code)
    {
        using var study = new TestStudy(Some.Mapping).With("P01", "Fern");
        study.Drop("bay/a.csv", text);
        var result = study.RunOne();
        Assert.NotEqual(FileOutcome.Taken, result.Outcome);
        if (code is not null)
        {
            Assert.Equal(code, Assert.Single(result.Problems).Code);
            Assert.Single(study.InboxFiles());
        }
    }

    [Fact]
    public void WhatNoMappingReadsIsHeldWithWhatToDo()
    {
        using var study = new TestStudy(Some.Mapping with { Files = @"\d+\.csv" }).With("P01", "Fern");
        study.Drop("bya/1.csv", Headings);
        study.Drop("bay/x.csv", Headings + " ");
        study.Drop("loose.txt", "whatever");
        var results = study.Run();
        Assert.Equal(["file-name-unexpected", "source-unknown", "mapping-none"], results.Select(file => Assert.Single(file.Problems).Code));
        Assert.All(results, file => Assert.Equal(FileOutcome.Held, file.Outcome));
        Assert.Contains("inbox/bay/", results[1].Problems[0].Mend, StringComparison.Ordinal);
        Assert.Equal(3, study.Registry.IntakeFiles(IntakeStatus.Held).Count);
        Assert.Empty(study.InboxFiles());
    }

    [Fact]
    public void ANamedFileStaysWhereItIsAndAFolderIsRefused()
    {
        using var study = new TestStudy(Some.Mapping).With("P01", "Fern");
        var path = Path.Combine(study.Folder.Root, "export.csv");
        File.WriteAllText(path, Headings + Rows("Fern", (1, "10:00:00", "90")));
        Assert.Equal(FileOutcome.Taken, study.RunOne(path).Outcome);
        Assert.True(File.Exists(path));
        Assert.Equal("file-is-folder", Assert.Single(study.RunOne(study.Folder.Root).Problems).Code);
        Assert.Equal("file-missing", Assert.Single(study.RunOne(path + "x").Problems).Code);
    }

    [Fact]
    public void AFileThatIsNamedTwiceIsTakenOnce()
    {
        using var study = new TestStudy(Some.Mapping).With("P01", "Fern");
        var (inbox, other) = (study.Drop("bay/a.csv", Headings + Rows("Fern", (1, "10:00:00", "90"))), Path.Combine(study.Folder.Root, "export.csv"));
        File.WriteAllText(other, Headings + Rows("Fern", (1, "11:00:00", "91")));

        var results = study.Run(inbox, other, inbox, Path.Combine(study.Folder.Root, "..", Path.GetFileName(study.Folder.Root), "export.csv"));

        Assert.Equal([("bay/a.csv", FileOutcome.Taken), ("export.csv", FileOutcome.Taken)], results.Select(file => (file.File, file.Outcome)));
    }

    [Fact]
    public void AFileThatGrowsWhileItIsLookedAtIsLeftAlone()
    {
        using var study = new TestStudy(Some.Mapping).With("P01", "Fern");
        var path = study.Drop("bay/a.csv", Headings);
        File.SetLastWriteTimeUtc(path, DateTime.UtcNow);
        var clock = new InterruptedWait(() => File.AppendAllText(path, Rows("Fern", (1, "10:00:00", "90"))));
        var outcome = new StudyIntake(study.Context with { Settling = TimeSpan.FromMinutes(1), Time = clock }).Run();
        Assert.Equal("file-changing", Assert.Single(Assert.Single(outcome.Value!.Files).Problems).Code);
        Assert.Single(study.InboxFiles());
        Assert.Equal(FileOutcome.Taken, study.RunOne().Outcome);
    }

    [Fact]
    public void AUnitThatChangedBetweenExportsHoldsTheFileBeforeItIsUsed()
    {
        var mapping = Some.Mapping with { Values = new Dictionary<string, FieldSource> { ["club_speed"] = Some.Column("Club speed") with { Unit = "m/s" } } };
        using var study = new TestStudy(mapping).With("P01", "Fern");
        study.Drop("bay/a.csv", Headings + Rows("Fern", (1, "10:00:00", "36,1"), (2, "10:01:00", "36,8"), (3, "10:02:00", "35,9")));
        study.RunOne();
        study.Drop("bay/b.csv", Headings + Rows("Fern", (1, "11:00:00", "81,1"), (2, "11:01:00", "82"), (3, "11:02:00", "80,5")));
        var held = study.RunOne();
        Assert.Equal((FileOutcome.Held, "unit-jump"), (held.Outcome, Assert.Single(held.Problems).Code));
        Decide(study, "include", held.Hash!.Value);
        Assert.Equal(FileOutcome.Taken, study.RunOne().Outcome);
    }

    [Fact]
    public void AColdDayIsNoChangeOfUnit()
    {
        var mapping = Some.Mapping with
        {
            Layout = new Layout { PreambleRows = 1 },
            Values = new Dictionary<string, FieldSource>
            {
                ["air_temperature"] = Some.Preamble(@"Temperature (?<value>\S+)") with { Unit = "Cel" },
                ["smash"] = Some.Column("Club speed"),
            },
        };
        using var study = new TestStudy(mapping).With("P01", "Fern");
        study.Drop("bay/a.csv", "Temperature 20,0\n" + Headings + Rows("Fern", (1, "10:00:00", "1,4"), (2, "10:01:00", "1,4"), (3, "10:02:00", "1,4")));
        study.Drop("bay/b.csv", "Temperature 9,0\n" + Headings + Rows("Fern", (1, "11:00:00", "0,63"), (2, "11:01:00", "0,63"), (3, "11:02:00", "0,63")));
        Assert.All(study.Run(), file => Assert.Equal(FileOutcome.Taken, file.Outcome));
    }

    [Fact]
    public void NamesStandNowhereButInOriginalsAndIdentities()
    {
        using var study = new TestStudy(Some.Mapping with { Layout = new Layout { PreambleRows = 1 } }).With("P01", "Fernanda Q.");
        study.Drop("bay/a.csv", "Coach list: Fernanda Q.\n" + Headings + "1;Fernanda Q.;;90\n2;Fernanda Q.;07.09.2026 10:00:00;90\n3;Fernanda Q.;07.09.2026 10:01:00;90;9;9\n");
        var result = study.RunOne();
        Assert.Equal(2, result.Counts.Rejected);
        Assert.Equal("1;P01;;90", study.Rejects("raw")[0]);
        Assert.Empty(study.FilesHolding("Fernanda"));
        Assert.Contains("P01", study.Registry.IntakeFile(result.Hash!.Value)!.Preamble!, StringComparison.Ordinal);
    }

    [Fact]
    public void ALedgerEntryStandsForEachFile()
    {
        using var study = new TestStudy(Some.Mapping).With("P01", "Fern");
        study.Drop("bay/a.csv", Headings + Rows("Fern", (1, "10:00:00", "90")));
        study.Drop("bay/b.csv", Headings + Rows("Nobody", (1, "10:00:00", "90")));
        study.Run();
        Assert.Equal(["people.add", "intake.held", "intake.file"], study.Registry.Ledger.Entries().Select(entry => entry.Act));
    }

    private static void Decide(TestStudy study, string kind, Sha256 file) => study.Registry.Act("test", "decide", act =>
    {
        act.Add(new Decision(0, kind, $$"""{"file":"{{file}}"}""", "looked at it", "test", NodaTime.Instant.FromUtc(2026, 9, 8, 0, 0)));
        return "{}";
    });

    /// <summary>Waiting takes no time, but something happens meanwhile.</summary>
    private sealed class InterruptedWait(Action meanwhile) : TimeProvider
    {
        public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
        {
            meanwhile();
            return base.CreateTimer(callback, state, TimeSpan.Zero, period);
        }
    }
}
