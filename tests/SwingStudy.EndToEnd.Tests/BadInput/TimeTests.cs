using SwingStudy.EndToEnd.Tests.Running;

namespace SwingStudy.EndToEnd.Tests.BadInput;

/// <summary>Times that can be misread.</summary>
public sealed class TimeTests
{
    [Fact]
    public void AnHourThatOccursTwiceIsHeldUntilAPersonSaysWhichIsMeant()
    {
        using var study = new TestStudy(SensorMapping.With());
        study.Drop("bay/a.csv", "Player,Time,No,Speed\nAda Invented,2026-10-25 02:10:00,1,41\nAda Invented,2026-10-25 02:20:00,2,42\n");
        var intake = study.Ingest(1);
        Assert.Contains("--times earlier", intake.Problem("bay/a.csv", "time-repeated").GetProperty("mend").GetString()!, StringComparison.Ordinal);

        var hash = intake.Became("bay/a.csv", "held").GetProperty("sha256").GetString()!;
        study.Run("decide", "file", hash[..12], "--take", "--times", "earlier", "--reason", "The range closed at half past two, summer time.").Expect(0);
        var again = study.Ingest();
        again.Counted("bay/a.csv", taken: 2);
        Assert.Contains("person", again.Remark("bay/a.csv", "time-repeated-decided").GetProperty("mend").GetString()!, StringComparison.Ordinal);
        Assert.StartsWith("2026-10-25T00:10:00", study.Query("SELECT min(recorded_at) FROM captures")[0][0].GetString()!, StringComparison.Ordinal);
    }

    [Fact]
    public void AnHourThatOccursTwiceIsDecidedByTheOrderOfRowsWhereTheClockFallsBack()
    {
        using var study = new TestStudy(SensorMapping.With());
        study.Drop("bay/a.csv", "Player,Time,No,Speed\nAda Invented,2026-10-25 02:50:00,1,41\nAda Invented,2026-10-25 02:05:00,2,42\n");
        var intake = study.Ingest();
        intake.Counted("bay/a.csv", taken: 2);
        intake.Remark("bay/a.csv", "time-repeated-decided");
    }

    [Fact]
    public void ATimeThatNeverWasIsRejectedWithItsRawText()
    {
        using var study = new TestStudy(SensorMapping.With());
        study.Drop("bay/a.csv", "Player,Time,No,Speed\nAda Invented,2026-03-29 02:30:00,1,41\nAda Invented,2026-03-29 03:30:00,2,42\n");
        study.Ingest().Counted("bay/a.csv", taken: 1, rejected: 1);
        Assert.Contains("2026-03-29 02:30:00", Assert.Single(study.Query("SELECT raw FROM rejects"))[0].GetString()!, StringComparison.Ordinal);
    }

    [Fact]
    public void AMappingWithoutZoneIsRefusedWithItsLine()
    {
        using var study = new TestStudy(SensorMapping.With(time: "{ parts: [{ column: Time }], format: 'yyyy-MM-dd HH:mm:ss' }"));
        var problem = Assert.Single(study.Run("source", "check", "--json").Expect(3).Json.GetProperty("problems").EnumerateArray());
        Assert.Equal(8, problem.GetProperty("row").GetInt32());
        Assert.Contains("zone", problem.GetProperty("mend").GetString()!, StringComparison.Ordinal);
    }

    [Fact]
    public void DaysThatMayBeMonthsAreHeldWithBothReadings()
    {
        using var study = new TestStudy(SensorMapping.With(time: "{ parts: [{ column: Time }], zone: Europe/Berlin }"));
        study.Drop("bay/a.csv", "Player,Time,No,Speed\nAda Invented,03/04/2026 10:00:00,1,41\nAda Invented,05/04/2026 10:00:00,2,42\n");
        study.Drop("bay/b.csv", "Player,Time,No,Speed\nAda Invented,03/05/2026 10:00:00,1,41\nAda Invented,13/05/2026 10:00:00,2,42\n");
        var intake = study.Ingest(1);
        var found = intake.Problem("bay/a.csv", "time-ambiguous").GetProperty("found").GetString()!;
        Assert.Contains("dd/MM/yyyy", found, StringComparison.Ordinal);
        Assert.Contains("MM/dd/yyyy", found, StringComparison.Ordinal);
        intake.Counted("bay/b.csv", taken: 2);
    }

    [Fact]
    public void ARowThatDoesNotFitTheDeclaredFormatIsRejectedWithItsRawText()
    {
        using var study = new TestStudy(SensorMapping.With());
        study.Drop("bay/a.csv", SensorMapping.File() + "Ada Invented,05/04/2026 10:00,9,41\nAda Invented,,10,41\n");
        study.Ingest().Counted("bay/a.csv", taken: 3, rejected: 2);
        Assert.Contains(study.Query("SELECT raw FROM rejects"), row => row[0].GetString()!.Contains("05/04/2026 10:00", StringComparison.Ordinal));
    }
}
