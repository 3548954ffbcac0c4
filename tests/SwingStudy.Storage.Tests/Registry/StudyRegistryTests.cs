using Dapper;
using Microsoft.Data.Sqlite;
using NodaTime;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.People;
using SwingStudy.Domain.Problems;
using SwingStudy.Storage.Registry;
using SwingStudy.Storage.Tests.Support;

namespace SwingStudy.Storage.Tests.Registry;

public sealed class StudyRegistryTests : IDisposable
{
    private static readonly Instant Monday = Instant.FromUtc(2026, 9, 7, 8, 0);
    private static readonly ParticipantId P01 = new("P01");
    private readonly TemporaryStudy _study = new();
    private readonly StudyRegistry _registry;

    public StudyRegistryTests()
    {
        _registry = new StudyRegistry(_study.Folder);
        _registry.Act("coach", "people.add", act =>
        {
            act.Save(new Participant(P01, "enrolled", Monday));
            return """{"participant":"P01"}""";
        });
    }

    public void Dispose()
    {
        _registry.Dispose();
        _study.Dispose();
    }

    [Fact]
    public void WhatAnActWritesIsReadBack()
    {
        var file = new IntakeFile
        {
            Hash = Sha256.Of("a"),
            Source = "plates",
            InboxPath = "plates/a.csv",
            Size = 1,
            Status = IntakeStatus.Held,
            LinesRead = 3,
            MappingHash = Sha256.Of("m"),
            Delimiter = ";",
            HoldReasons = [new Problem("alias-unknown", new Place("a.csv", 4, "Name"), "x", "y", "z")],
            At = Monday,
        };
        var session = new SessionRecord
        {
            Id = "P01-20260907-1",
            Participant = P01,
            StartedAt = Monday,
            StartedLocal = new LocalDateTime(2026, 9, 7, 10, 0),
            Phase = "baseline",
            PlannedSwings = 20,
            Variables = """{"rpe":7}""",
            Original = Sha256.Of("a"),
            OriginalRow = 2,
        };
        _registry.Act("coach", "intake.file", act =>
        {
            act.Save(file);
            act.AddDuplicate(file.Hash, "plates/b.csv", Monday);
            Assert.True(act.Save(session));
            Assert.False(act.Save(session));
            act.Add(new Consent(P01, ConsentScope.Research, true, ConsentSigner.Guardian, Monday) { Version = "2", Language = "de", SignedOn = new LocalDate(2026, 9, 1), TakenBy = "office" });
            Assert.Equal(1, act.Add(new Decision(0, "exclude", """{"swing":"s"}""", "slipped", "coach", Monday)));
            return "{}";
        });
        var read = Assert.Single(_registry.IntakeFiles(IntakeStatus.Held));
        Assert.Equal(file with { HoldReasons = read.HoldReasons }, read);
        Assert.Equal(file.HoldReasons, read.HoldReasons);
        Assert.Equal(session, Assert.Single(_registry.Sessions(P01)));
        Assert.Equal("slipped", Assert.Single(_registry.Decisions("exclude")).Reason);
        Assert.Equal(new Consent(P01, ConsentScope.Research, true, ConsentSigner.Guardian, Monday) { Version = "2", Language = "de", SignedOn = new LocalDate(2026, 9, 1), TakenBy = "office" },
            Assert.Single(_registry.Consents(P01)));
        Assert.Equal(new IntakeCounts(0, 1, 0, 1, 0, 0, 0, 0), _registry.IntakeCounts());
        Assert.Equal([P01], _registry.Participants().Select(person => person.Code));
    }

    [Fact]
    public void AFailedActLeavesNeitherRowsNorALedgerEntry()
    {
        Assert.Throws<InvalidOperationException>(() => _registry.Act("coach", "people.add", act =>
        {
            act.Save(new Participant(new ParticipantId("P02"), "enrolled", Monday));
            throw new InvalidOperationException();
        }));
        Assert.Single(_registry.Participants());
        Assert.Single(_registry.Ledger.Entries());
    }

    [Fact]
    public void LinesOfATakenFileMustAddUp() => Assert.Throws<InvalidOperationException>(() => _registry.Act("coach", "intake.file", act =>
    {
        act.Save(new IntakeFile { Hash = Sha256.Of("a"), InboxPath = "a", Size = 1, Status = IntakeStatus.Taken, LinesRead = 3, RowsTaken = 2, At = Monday });
        return "{}";
    }));

    [Fact]
    public void ACorrectedSessionIsANewRevision()
    {
        var session = new SessionRecord { Id = "P01-20260907-1", Participant = P01, StartedAt = Monday, StartedLocal = new LocalDateTime(2026, 9, 7, 10, 0) };
        _registry.Act("coach", "session.add", act => act.Save(session) ? "{}" : "");
        _registry.Act("coach", "session.add", act => act.Save(session with { Phase = "baseline" }) ? "{}" : "");
        Assert.Equal(2, Assert.Single(_registry.Sessions()).Revision);
    }

    [Fact]
    public void TheNewestRunOfEachUnitIsFound()
    {
        StageRun Run(string unit, string input) => new("r1", "link", unit, Sha256.Of(input), ["links/a.parquet"], "1", Monday, Monday);
        _registry.Record([Run("a", "1"), Run("b", "1"), Run("a", "2")]);
        Assert.Equal([Sha256.Of("2"), Sha256.Of("1")], _registry.NewestRuns("link").Select(run => run.InputHash));
        Assert.Equal("a", _registry.LastRun()!.Unit);
    }

    [Fact]
    public void TheLedgerRefusesChanges()
    {
        using var connection = Open();
        Assert.Throws<SqliteException>(() => connection.Execute("UPDATE ledger SET actor = 'x'"));
        Assert.Throws<SqliteException>(() => connection.Execute("DELETE FROM ledger"));
    }

    [Theory]
    [InlineData("UPDATE ledger SET actor = 'x' WHERE number = 2", 2)]
    [InlineData("UPDATE ledger SET details = '{\"a\":1}' WHERE number = 3", 3)]
    [InlineData("UPDATE ledger SET at = '2020-01-01T00:00:00Z' WHERE number = 1", 1)]
    [InlineData("DELETE FROM ledger WHERE number = 2", 2)]
    [InlineData("UPDATE ledger SET hash = previous WHERE number = 3", 3)]
    public void TamperingIsFoundAtTheFirstEntryThatDoesNotHold(string tampering, long number)
    {
        for (var i = 0; i < 3; i++)
            _registry.Act("coach", "test", _ => """{"b":1,"a":[1.50,"é"]}""");
        Assert.Null(_registry.Ledger.Verify());
        using (var connection = Open())
        {
            connection.Execute("DROP TRIGGER ledger_is_never_changed; DROP TRIGGER ledger_is_never_shortened;");
            connection.Execute(tampering);
        }

        Assert.Equal(number, _registry.Ledger.Verify()!.Number);
    }

    private SqliteConnection Open()
    {
        var connection = new SqliteConnection($"Data Source={_study.Folder.Registry};Pooling=False");
        connection.Open();
        return connection;
    }
}
