using System.Text.Json;
using SwingStudy.EndToEnd.Tests.Running;

namespace SwingStudy.EndToEnd.Tests.People;

/// <summary>What the rules about people forbid is refused with exit code 4 and a message that says what to do, and nothing is lost by it.</summary>
public sealed class RefusalTests
{
    private const string Header = "Player,Time,No,Speed\n";

    [Fact]
    public void WithoutConsentAFileIsHeldAndWithItTheHeldFileIsTaken()
    {
        using var study = new TestStudy(SensorMapping.With());
        study.Run("people", "add", "P03", "--alias", "Cleo Invented", "--age-band", "30-44").Expect(0);
        study.Drop("bay/a.csv", Header + "Cleo Invented,2026-05-04 10:00:00,1,41\n");

        var intake = study.Ingest(4);
        intake.Became("bay/a.csv", "held");
        Assert.Contains("people consent P03 --scope research", intake.Problem("bay/a.csv", "consent-missing").GetProperty("mend").GetString()!, StringComparison.Ordinal);
        Assert.Contains("consent-missing", study.Run("status", "--json").Expect(1).Output, StringComparison.Ordinal);
        // Consent to something else is no consent to this.
        study.Run("people", "consent", "P03", "--scope", "video", "--scope", "coaching").Expect(0);
        study.Ingest(4).Became("bay/a.csv", "held");

        study.Run("people", "consent", "P03", "--scope", "research", "--form", "2", "--language", "en", "--date", "2026-05-01", "--taken-by", "office").Expect(0);
        study.Ingest().Counted("bay/a.csv", taken: 1);
        // Taken back: what came is there, nothing more comes in.
        study.Run("people", "consent", "P03", "--scope", "research", "--taken-back").Expect(0);
        study.Drop("bay/b.csv", Header + "Cleo Invented,2026-05-05 10:00:00,1,41\n");
        study.Ingest(4).Problem("bay/b.csv", "consent-refused");
        Assert.Single(study.Query("SELECT * FROM captures"));
    }

    [Fact]
    public void AMinorNeedsAGuardianAndAnAssentAndIsAskedAgainWhenOfAge()
    {
        using var study = new TestStudy(SensorMapping.With());
        AllowMinors(study);
        study.Run("people", "add", "P03", "--alias", "Cleo Invented", "--age-band", "16-17").Expect(0);
        study.Drop("bay/a.csv", Header + "Cleo Invented,2026-05-04 10:00:00,1,41\n");
        study.Run("people", "consent", "P03", "--scope", "research").Expect(0);
        study.Ingest(4).Problem("bay/a.csv", "guardian-missing");
        study.Run("people", "consent", "P03", "--scope", "research", "--by-guardian").Expect(0);
        study.Ingest(4).Problem("bay/a.csv", "assent-missing");
        study.Run("people", "consent", "P03", "--scope", "research", "--assent").Expect(0);
        study.Ingest().Counted("bay/a.csv", taken: 1);

        study.Run("people", "add", "P04", "--alias", "Dora Invented", "--age-band", "16-17").Expect(0);
        study.Run("people", "consent", "P04", "--scope", "research", "--by-guardian").Expect(0);
        study.Run("people", "consent", "P04", "--scope", "research", "--assent").Expect(0);
        study.Run("people", "edit", "P04", "--age-band", "18-29").Expect(0);
        study.Drop("bay/b.csv", Header + "Dora Invented,2026-05-04 11:00:00,1,41\n");
        study.Ingest(4).Problem("bay/b.csv", "consent-again");
        Assert.Contains("consent-again", study.Run("status", "--json").Expect(1).Json.GetProperty("consents_due").GetRawText(), StringComparison.Ordinal);
    }

    [Fact]
    public void WhoDoesNotFitTheProtocolIsNotEnrolled()
    {
        using var study = new TestStudy(SensorMapping.With());
        var refused = study.Run("people", "add", "P03", "--age-band", "12-15", "--json").Expect(4);
        Assert.Equal("not-eligible-age", Problem(refused).GetProperty("code").GetString());
        study.Run("people", "consent", "P03", "--scope", "research").Expect(3);
        study.Run("people", "add", "P03", "--age-band", "teenager").Expect(3);
        study.Run("people", "add", "P03", "--set", "club_head_speed=40").Expect(3);
    }

    [Fact]
    public void AfterWithdrawalNothingIsTakenInAndEarlierDataCountAsThePlayerChose()
    {
        using var study = new TestStudy(SensorMapping.With());
        study.Run("session", "add", "P01", "--start", "2026-05-04 09:55", "--phase", "baseline").Expect(0);
        study.Drop("bay/a.csv", SensorMapping.File());
        study.Ingest();
        study.Run("run").Expect(0);
        study.Run("people", "withdraw", "P01").Expect(0);
        study.Run("run").Expect(0);
        Assert.Equal(3, study.Query("SELECT count(*) FROM swings WHERE included")[0][0].GetInt64());
        study.Drop("bay/b.csv", SensorMapping.File(day: "2026-05-05"));
        study.Ingest(4).Problem("bay/b.csv", "participant-left");
        study.Run("session", "add", "P01", "--start", "2026-05-05 09:55", "--phase", "baseline").Expect(4);

        study.Run("people", "withdraw", "P01", "--earlier", "leave-out").Expect(0);
        study.Run("run").Expect(0);
        Assert.Equal(0, study.Query("SELECT count(*) FROM swings WHERE included")[0][0].GetInt64());
        Assert.Equal(3, study.Query("SELECT count(*) FROM flags WHERE rule = 'withdrawn'")[0][0].GetInt64());
        study.Run("people", "withdraw", "P01", "--earlier", "keep").Expect(0);
        study.Run("run").Expect(0);
        Assert.Equal(3, study.Query("SELECT count(*) FROM swings WHERE included")[0][0].GetInt64());
    }

    [Fact]
    public void AWrongPassphraseIsRefusedAndSaysNothing()
    {
        using var study = new TestStudy(SensorMapping.With());
        string File(string name, string passphrase)
        {
            System.IO.File.WriteAllText(study.PathOf(name), passphrase + "\n");
            return study.PathOf(name);
        }

        var (right, wrong) = (File("right.txt", "seven invented herons"), File("wrong.txt", "eight invented herons"));
        study.Run("people", "edit", "P01", "--name", "Ada Augusta Invented").Expect(0);
        study.Run("people", "vault", "init").Expect(2);
        study.Run("people", "vault", "init", "--passphrase-file", right).Expect(0);
        Assert.DoesNotContain("Augusta", System.Text.Encoding.Latin1.GetString(System.IO.File.ReadAllBytes(study.PathOf("identities.db"))), StringComparison.Ordinal);

        var refused = study.Run("people", "vault", "unlock", "--passphrase-file", wrong, "--json").Expect(4);
        Assert.Equal("vault-not-opened", Problem(refused).GetProperty("code").GetString());
        Assert.DoesNotContain("Augusta", refused.Output + refused.Error, StringComparison.Ordinal);
        study.Run("people", "edit", "P01", "--name", "Other", "--passphrase-file", wrong).Expect(4);
        study.Run("people", "edit", "P01", "--name", "Other").Expect(4);
        study.Run("people", "erase", "P01", "--yes").Expect(4);
        Assert.Contains("Ada Augusta Invented", study.Run("people", "vault", "unlock", "--passphrase-file", right, "--json").Expect(0).Output, StringComparison.Ordinal);
        // Intake needs no passphrase, and keeps names of players out of what it stores.
        study.Drop("bay/a.csv", Header + "Ada Invented,yesterday,1,41\nBen Invented,2026-05-04 10:01:00,2,41\n");
        study.Ingest().Counted("bay/a.csv", taken: 1, rejected: 1);
        Assert.DoesNotContain("Ada", study.Query("SELECT raw FROM rejects")[0][0].GetString()!, StringComparison.Ordinal);
    }

    [Fact]
    public void ADecisionOnAnUnknownSwingIsRefused()
    {
        using var study = new TestStudy(SensorMapping.With());
        var refused = study.Run("decide", "exclude", "P01-20260504-1-99", "--reason", "a slip", "--json").Expect(3);
        Assert.Equal("swing-unknown", Problem(refused).GetProperty("code").GetString());
        Assert.Contains("swingstudy run", Problem(refused).GetProperty("mend").GetString()!, StringComparison.Ordinal);
        study.Run("people", "erase", "P99").Expect(3);
        study.Run("people", "withdraw", "P99").Expect(3);
        study.Run("session", "note", "P01-20260504-1", "--set", "pain_nrs=1").Expect(3);
    }

    private static JsonElement Problem(Finished finished) => finished.Json.GetProperty("problems")[0];

    private static void AllowMinors(TestStudy study)
    {
        var protocol = study.PathOf("protocol.yaml");
        System.IO.File.WriteAllText(protocol, System.IO.File.ReadAllText(protocol).Replace("minors_allowed: false", "minors_allowed: true", StringComparison.Ordinal).Replace("minimum_age: 18", "minimum_age: 16", StringComparison.Ordinal));
    }
}
