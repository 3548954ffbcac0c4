using Dapper;
using Microsoft.Data.Sqlite;
using NodaTime;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Protocols;
using SwingStudy.Storage.Registry;
using SwingStudy.Storage.Tests.Support;

namespace SwingStudy.Storage.Tests.Registry;

public sealed class ProtocolRecordsTests : IDisposable
{
    private static readonly Instant Monday = Instant.FromUtc(2026, 9, 7, 8, 0);
    private readonly TemporaryStudy _study = new();
    private readonly StudyRegistry _registry;

    public ProtocolRecordsTests()
    {
        _registry = new StudyRegistry(_study.Folder);
        Act(act =>
        {
            act.Save(new Participant(new ParticipantId("P01"), "enrolled", Monday));
            act.Save(new Participant(new ParticipantId("P02"), "enrolled", Monday));
        });
    }

    public void Dispose()
    {
        _registry.Dispose();
        _study.Dispose();
    }

    [Fact]
    public void VersionsAreReadBackAsTheyWereLocked()
    {
        var amended = Locked with { Number = 2, Reason = "The window was too narrow.", Known = "Baseline only.", Taken = [new("baseline", "baseline", 3, 36)] };
        Act(act =>
        {
            act.Add(Locked);
            act.Add(amended);
        });

        var versions = _registry.Protocol.History().Versions;
        Assert.Equivalent(new[] { Locked, amended }, versions, strict: true);
        Assert.Equal(versions[0].Hash, Sha256.Of(versions[0].Text));
    }

    [Fact]
    public void AnAmendmentWithoutReasonIsNoRow() => Assert.Throws<SqliteException>(() => Act(act =>
    {
        act.Add(Locked);
        act.Add(Locked with { Number = 2 });
    }));

    [Theory]
    [InlineData("UPDATE protocol_versions SET text = 'other'")]
    [InlineData("DELETE FROM protocol_versions")]
    [InlineData("DELETE FROM unblindings")]
    public void ALockedVersionAndAnUnblindingStay(string sql)
    {
        Act(act =>
        {
            act.Add(Locked);
            act.Add(new Unblinding(Monday, "coach", "The study is over.", null));
        });
        using var connection = new SqliteConnection($"Data Source={_study.Folder.Registry};Pooling=False");

        Assert.Throws<SqliteException>(() => connection.Execute(sql));
    }

    [Fact]
    public void ADrawIsReadBackWithItsSetAndTheLaterDrawOfAPlayerHolds()
    {
        var first = DrawOf(1, Player("P01", 5), Player("P02", 6));
        var second = DrawOf(2, Player("P02", 7));
        Act(act =>
        {
            act.Add(Locked);
            act.Add(first);
            act.Add(second);
        });

        var schedule = _registry.Protocol.Schedule();
        Assert.Equivalent(new[] { first, second }, schedule.Draws, strict: true);
        Assert.Equal((5, 7), (schedule.Of("P01")!.Start, schedule.Of("P02")!.Start));
        Assert.Equal(2, schedule.DrawOf("P02")!.Number);
        Assert.Null(schedule.Of("P03"));
    }

    [Fact]
    public void ANameKeepsItsCodeAndBlindnessEndsOnce()
    {
        Act(act =>
        {
            act.Add(new MaskedName(MaskedName.Phase, "baseline", "K"));
            act.Add(new MaskedName(MaskedName.Phase, "baseline", "M"));
        });
        Assert.Equal([new MaskedName(MaskedName.Phase, "baseline", "K")], _registry.Protocol.MaskedNames());
        Assert.Null(_registry.Protocol.Unblinding());

        Act(act => act.Add(new Unblinding(Monday, "coach", "The study is over.", "Nothing.")));
        Assert.Equal(new Unblinding(Monday, "coach", "The study is over.", "Nothing."), _registry.Protocol.Unblinding());
    }

    private static ProtocolVersion Locked { get; } = new()
    {
        Number = 1,
        Hash = Sha256.Of("name: small"),
        Version = "1.0.0",
        Text = "name: small",
        At = Monday,
        Actor = "coach",
        Comparisons = [new("club_head_speed", "with-cue", "baseline", "cue", "primary", 0.9)],
    };

    private static Draw DrawOf(int number, params DrawnPlayer[] players) => new()
    {
        Number = number,
        ProtocolVersion = 1,
        Kind = Randomization.PhaseStart,
        Seed = ulong.MaxValue,
        IsJoint = false,
        Assignments = 3,
        At = Monday,
        Actor = "coach",
        Players = players,
    };

    private static DrawnPlayer Player(string code, int start) => new()
    {
        Participant = code,
        Set = new AssignmentSet { Kind = Randomization.PhaseStart, Sessions = 12, Starts = [5, 6, 7], Count = 3, Listed = ["000001111111", "000000111111", "000000011111"] },
        Assignment = new string('0', start) + new string('1', 12 - start),
        Phases = [.. Enumerable.Repeat("baseline", start), .. Enumerable.Repeat("cue", 12 - start)],
    };

    private void Act(Action<RegistryAct> write) => _registry.Act("coach", "test", act =>
    {
        write(act);
        return "{}";
    });
}
