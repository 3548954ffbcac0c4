namespace SwingStudy.EndToEnd.Tests.Protocols;

/// <summary>A locked protocol is changed on record or not at all.</summary>
public sealed class LockTests
{
    [Fact]
    public void ALockedProtocolThatWasEditedByHandIsRefusedByEachCommandThatUsesIt()
    {
        using var study = new PlannedStudy();
        study.Run("protocol", "lock").Expect(0);
        study.Edit("amount: 2", "amount: 1");
        foreach (var command in new[]
        {
            "run", "ingest", "status", "query|SELECT 1", "export|--to|out", "report", "release|autumn", "session|list", "people|list", "audit|verify", "audit|log",
            "session|add|P01|--start|2026-05-04 10:00|--phase|quiet-weeks", "decide|exclude|P01-20260504-1-01|--reason|Misread.",
            "protocol|check", "protocol|show", "protocol|plan", "protocol|schedule", "protocol|lock", "protocol|unblind|--reason|Done.",
        })
        {
            var problem = study.Refused(command.Split('|'));
            Assert.Equal("protocol-edited", problem.GetProperty("code").GetString());
            Assert.EndsWith("protocol.yaml", problem.GetProperty("file").GetString()!, StringComparison.Ordinal);
            Assert.Contains("protocol amend", problem.GetProperty("mend").GetString()!, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void AnEditThatCanNoLongerBeReadIsStillRefusedAsAnEdit()
    {
        using var study = new PlannedStudy();
        study.Run("protocol", "lock").Expect(0);
        study.Write("name: [");

        Assert.Equal("protocol-edited", study.Refused("run").GetProperty("code").GetString());
        Assert.Equal("protocol-edited", study.Refused("protocol", "check").GetProperty("code").GetString());
    }

    [Fact]
    public void RestoringPutsTheLockedTextBackAndKeepsTheEdit()
    {
        using var study = new PlannedStudy();
        var locked = File.ReadAllText(study.PathOf("protocol.yaml"));
        study.Run("protocol", "lock").Expect(0);
        study.Edit("amount: 2", "amount: 1");
        var edited = File.ReadAllText(study.PathOf("protocol.yaml"));

        var aside = study.Run("protocol", "restore", "--json").Expect(0).Json.GetProperty("edited").GetString()!;
        Assert.Equal(locked, File.ReadAllText(study.PathOf("protocol.yaml")));
        Assert.Equal(edited, File.ReadAllText(aside));
        study.Run("status").Expect(0);
    }

    [Fact]
    public void AnAmendmentWithoutReasonOrWithoutWhatWasKnownOrWithoutItsVersionIsRefusedAndChangesNothing()
    {
        using var study = new PlannedStudy();
        study.Run("protocol", "lock").Expect(0);
        study.Edit("amount: 2", "amount: 1");

        Assert.Equal("reason-missing", study.Refused("protocol", "amend", "--known", "Nothing.").GetProperty("code").GetString());
        Assert.Equal("reason-missing", study.Refused("protocol", "amend", "--reason", " ", "--known", "Nothing.").GetProperty("code").GetString());
        Assert.Equal("known-missing", study.Refused("protocol", "amend", "--reason", "Smaller changes matter.").GetProperty("code").GetString());
        study.Run("protocol", "amend", "--reason", "Smaller changes matter.", "--known", "Nothing.").Expect(3);
        Assert.Single(study.Run("protocol", "history", "--json").Expect(0).Json.GetProperty("versions").EnumerateArray());
    }

    [Fact]
    public void ALockedVersionCanBeShownAndComparedAfterItWasAmended()
    {
        using var study = new PlannedStudy();
        var locked = File.ReadAllText(study.PathOf("protocol.yaml"));
        var hash = study.Run("protocol", "lock", "--json").Expect(0).Json.GetProperty("hash").GetString();
        study.Edit("amount: 2", "amount: 1");
        study.Raise("1.1.0");
        study.Run("protocol", "amend", "--reason", "Smaller changes matter.", "--known", "Nothing.").Expect(0);

        var first = study.Run("protocol", "history", "--text", "1", "--json").Expect(0).Json;
        Assert.Equal((locked, hash), (first.GetProperty("text").GetString(), first.GetProperty("hash").GetString()));
        Assert.Equal(
            ["-version: 1.0.0", "+version: 1.1.0", "-amount: 2", "+amount: 1"],
            study.Run("protocol", "diff", "--from", "1", "--to", "2", "--json").Expect(0).Json.GetProperty("lines").EnumerateArray()
                .Select(line => (line.GetProperty("change").GetString() == "removed" ? "-" : "+") + Short(line.GetProperty("text").GetString()!)));
        study.Run("status").Expect(0);
    }

    [Fact]
    public void ALinkToTheLockedTextIsTheLockedProtocolAndIsNeverWrittenThrough()
    {
        using var study = new PlannedStudy();
        study.Run("protocol", "lock").Expect(0);
        var (protocol, elsewhere) = (study.PathOf("protocol.yaml"), study.PathOf("../team-protocol.yaml"));
        var locked = File.ReadAllText(protocol);
        File.Move(protocol, elsewhere);
        File.CreateSymbolicLink(protocol, elsewhere);
        study.Run("status").Expect(0);
        study.Run("audit", "verify").Expect(0);

        // Another text at its end is an edit, and putting the locked one back leaves what the link led to alone.
        File.WriteAllText(elsewhere, locked.Replace("amount: 2", "amount: 1", StringComparison.Ordinal));
        Assert.Equal("protocol-edited", study.Refused("status").GetProperty("code").GetString());
        study.Run("protocol", "restore").Expect(0);
        Assert.Null(new FileInfo(protocol).LinkTarget);
        Assert.Equal(locked, File.ReadAllText(protocol));
        Assert.Contains("amount: 1", File.ReadAllText(elsewhere), StringComparison.Ordinal);

        File.Delete(protocol);
        File.CreateSymbolicLink(protocol, elsewhere);
        var amended = study.PathOf("../amended.yaml");
        File.WriteAllText(amended, locked.Replace("amount: 2", "amount: 3", StringComparison.Ordinal).Replace("version: 1.0.0", "version: 1.1.0", StringComparison.Ordinal));
        study.Run("protocol", "amend", amended, "--reason", "Larger changes matter.", "--known", "Nothing.").Expect(0);
        Assert.Null(new FileInfo(protocol).LinkTarget);
        Assert.Contains("amount: 3", File.ReadAllText(protocol), StringComparison.Ordinal);
        Assert.Contains("amount: 1", File.ReadAllText(elsewhere), StringComparison.Ordinal);
    }

    private static string Short(string line) => line.Contains("amount", StringComparison.Ordinal) ? line[line.IndexOf("amount", StringComparison.Ordinal)..line.IndexOf(", unit", StringComparison.Ordinal)] : line;
}
