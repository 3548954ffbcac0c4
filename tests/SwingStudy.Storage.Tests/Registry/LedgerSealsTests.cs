using Dapper;
using Microsoft.Data.Sqlite;
using NodaTime;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Storage.Registry;
using SwingStudy.Storage.Tests.Support;

namespace SwingStudy.Storage.Tests.Registry;

public sealed class LedgerSealsTests : IDisposable
{
    private static readonly Instant Monday = Instant.FromUtc(2026, 9, 7, 8, 0);
    private static readonly ParticipantId P01 = new("P01");
    private readonly TemporaryStudy _study = new();
    private readonly StudyRegistry _registry;

    public LedgerSealsTests()
    {
        _registry = new StudyRegistry(_study.Folder);
        foreach (var code in new[] { "P01", "P02" })
        {
            _registry.Act("coach", "people.add", act =>
            {
                act.Save(new Participant(new ParticipantId(code), Participant.Enrolled, Monday));
                return $$"""{"participant":"{{code}}"}""";
            });
        }
    }

    public void Dispose()
    {
        _registry.Dispose();
        _study.Dispose();
    }

    [Theory]
    [InlineData("""{"session":"P01-20260907-1"}""")]
    [InlineData("""{"subject":{"swing":"P01-20260907-1-03"},"reason":"a slip of Otter","decision":3}""")]
    [InlineData("""{"players":["P02","P01"],"share":0.5}""")]
    [InlineData("""{"what":"P01 and P02 changed places"}""")]
    public void WhatTellsOfAPersonIsAHashThatCanBeReadWhileThePersonIsThere(string details)
    {
        var entry = _registry.Act("coach", "act", _ => details);
        Assert.DoesNotContain("P01", entry.Details, StringComparison.Ordinal);
        Assert.DoesNotContain("Otter", entry.Details, StringComparison.Ordinal);
        Assert.Equal(CanonicalJson.Of(details), CanonicalJson.Of(_registry.Ledger.Readable(entry)));
        Assert.Null(_registry.Ledger.Verify());
        Assert.Empty(_registry.Ledger.BrokenSeals());
    }

    [Fact]
    public void WhatTellsOfNobodyStaysAsItIs() =>
        Assert.Equal("""{"name":"P010","reason":"Otter Lane is closed"}""", _registry.Act("coach", "act", _ => """{"name":"P010","reason":"Otter Lane is closed"}""").Details);

    [Fact]
    public void AChangedTextIsFound()
    {
        _registry.Act("coach", "act", _ => """{"session":"P01-20260907-1"}""");
        using (var other = new SqliteConnection($"Data Source={_study.Folder.Registry};Pooling=False"))
            other.Execute("UPDATE sealed_texts SET text = 'P01-20260908-1' WHERE text = 'P01-20260907-1'");
        Assert.Single(_registry.Ledger.BrokenSeals());
    }

    [Fact]
    public void ErasingAPersonLeavesALedgerThatVerifiesAndNothingToRead()
    {
        var shared = _registry.Act("coach", "act", _ => """{"what":"P01 and P02 changed places"}""");
        var own = _registry.Act("coach", "act", _ => """{"session":"P02-20260907-1"}""");
        _registry.Erase(erase =>
        {
            erase.Begin(P01, new Erasure("erasure-1", Monday, null, "{}"));
            erase.Remove(P01, new HashSet<string>(), text => text.Replace("Otter", "", StringComparison.Ordinal));
            erase.Finish(P01, "erasure-1", Monday);
        });
        _registry.Compact();
        Assert.Null(_registry.Ledger.Verify());
        Assert.Empty(_registry.Ledger.BrokenSeals());
        Assert.StartsWith("""{"what":"sealed:""", _registry.Ledger.Readable(shared), StringComparison.Ordinal);
        Assert.Equal("""{"session":"P02-20260907-1"}""", _registry.Ledger.Readable(own));
        Assert.Empty(_registry.TablesWith(text => text.Contains("P01", StringComparison.Ordinal)));
        Assert.Equal("P02", Assert.Single(_registry.Participants()).Code.ToString());
    }
}
