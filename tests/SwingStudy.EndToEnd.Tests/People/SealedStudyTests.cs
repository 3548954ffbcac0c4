using System.Text;
using SwingStudy.EndToEnd.Tests.Running;

namespace SwingStudy.EndToEnd.Tests.People;

/// <summary>A study with a vault encrypts its originals; intake, trace, audit and erasure work on.</summary>
public sealed class SealedStudyTests
{
    [Fact]
    public void OriginalsAreEncryptedAndEverythingStillWorks()
    {
        using var study = new TestStudy(SensorMapping.With());
        var passphrase = study.PathOf("../passphrase.txt");
        File.WriteAllText(passphrase, "seven invented herons");
        study.Drop("bay/before.csv", SensorMapping.File());
        study.Ingest();
        study.Run("people", "vault", "init", "--passphrase-file", passphrase).Expect(0);
        AssertNothingInClear(study);

        // Intake needs no passphrase, but for what it held earlier.
        study.Drop("bay/after.csv", SensorMapping.File(day: "2026-05-05") + SensorMapping.Rows(day: "2026-05-06").Replace("Ada", "Ben", StringComparison.Ordinal));
        study.Drop("bay/held.csv", SensorMapping.File(day: "2026-05-07").Replace("Ada Invented", "Nobody Known", StringComparison.Ordinal));
        study.Ingest(1).Counted("bay/after.csv", taken: 6);
        AssertNothingInClear(study);
        study.Drop("bay/after again.csv", SensorMapping.File(day: "2026-05-05") + SensorMapping.Rows(day: "2026-05-06").Replace("Ada", "Ben", StringComparison.Ordinal));
        var again = study.Ingest(1);
        again.Became("bay/after again.csv", "duplicate");
        again.Problem("bay/held.csv", "original-locked");
        study.Run("people", "add", "P03", "--alias", "Nobody Known", "--age-band", "30-44").Expect(0);
        study.Run("people", "consent", "P03", "--scope", "research", "--form", "1").Expect(0);
        Intake.Of(study.Run("ingest", "--passphrase-file", passphrase, "--json").Expect(0)).Counted("bay/held.csv", taken: 3);
        study.Run("run").Expect(0);

        var capture = study.Query("SELECT capture_id FROM captures WHERE participant = 'P02' ORDER BY original_row LIMIT 1")[0][0].GetString()!;
        string Cell(params string[] more) => study.Run(["audit", "trace", "captures", capture, "club_head_speed", "--json", .. more]).Expect(0).Json.GetProperty("origin").ToString();
        Assert.Contains("the vault is locked", Cell(), StringComparison.Ordinal);
        Assert.Contains("41.00", Cell("--passphrase-file", passphrase), StringComparison.Ordinal);
        Assert.Contains("the vault is locked", study.Run("audit", "verify").Expect(0).Output, StringComparison.Ordinal);
        Assert.DoesNotContain("the vault is locked", study.Run("audit", "verify", "--recompute", "--passphrase-file", passphrase).Expect(0).Output, StringComparison.Ordinal);

        // A row of the other player in the same file, which the erasure cuts.
        var kept = study.Query("SELECT capture_id FROM captures WHERE participant = 'P01' AND original_sha256 IN (SELECT original_sha256 FROM captures WHERE participant = 'P02') ORDER BY original_row LIMIT 1")[0][0].GetString()!;
        study.Run("people", "erase", "P02", "--yes").Expect(4);
        study.Run("people", "erase", "P02", "--yes", "--passphrase-file", passphrase).Expect(0);
        AssertNothingInClear(study);
        Assert.Contains("41.00", study.Run("audit", "trace", "captures", kept, "club_head_speed", "--json", "--passphrase-file", passphrase).Expect(0).Output, StringComparison.Ordinal);
        study.Run("audit", "verify", "--recompute", "--passphrase-file", passphrase).Expect(0);
    }

    private static void AssertNothingInClear(TestStudy study)
    {
        foreach (var file in Directory.EnumerateFiles(study.PathOf("originals"), "*", SearchOption.AllDirectories))
        {
            Assert.EndsWith(".sealed", file, StringComparison.Ordinal);
            Assert.DoesNotContain("Invented", Encoding.Latin1.GetString(File.ReadAllBytes(file)), StringComparison.Ordinal);
        }
    }
}
