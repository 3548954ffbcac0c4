using SwingStudy.EndToEnd.Tests.Running;

namespace SwingStudy.EndToEnd.Tests.BadInput;

/// <summary>Numbers that can be misread.</summary>
public sealed class NumberTests
{
    [Fact]
    public void ACommaBeforeDecimalsIsReadAsOne()
    {
        using var study = new TestStudy(SensorMapping.With());
        study.Drop("bay/a.csv", "Player;Time;No;Speed\nAda Invented;2026-05-04 10:00:00;1;41,5\nAda Invented;2026-05-04 10:01:00;2;42,25\n");
        study.Ingest().Counted("bay/a.csv", taken: 2);
        Assert.Equal([41.5, 42.25], Speeds(study));
    }

    [Fact]
    public void ANumberThatFitsTwoReadingsIsHeldWithTheQuestion()
    {
        using var study = new TestStudy(SensorMapping.With(speed: "{ column: Speed, unit: mm/s }"));
        study.Drop("bay/a.csv", "Player;Time;No;Speed\nAda Invented;2026-05-04 10:00:00;1;41.234\nAda Invented;2026-05-04 10:01:00;2;42.250\n");
        var intake = study.Ingest(1);
        intake.Became("bay/a.csv", "held");
        var problem = intake.Problem("bay/a.csv", "decimal-ambiguous");
        Assert.Contains("41.234", problem.GetProperty("found").GetString()!, StringComparison.Ordinal);
        Assert.Contains("decimal", problem.GetProperty("mend").GetString()!, StringComparison.Ordinal);

        File.WriteAllText(study.PathOf("sources/bay.yaml"), SensorMapping.With(speed: "{ column: Speed, unit: mm/s }", more: "text: { decimal: ',', thousands: '.' }"));
        study.Ingest().Counted("bay/a.csv", taken: 2);
        Assert.Equal([41.234, 42.25], Speeds(study));
    }

    [Fact]
    public void MissingTokensAreNoValuesAndZeroSpeedIsNoRead()
    {
        using var study = new TestStudy(SensorMapping.With("missing: ['--', NA, '9999']"));
        study.Drop("bay/a.csv", "Player,Time,No,Speed\nAda Invented,2026-05-04 10:00:00,1,--\nAda Invented,2026-05-04 10:01:00,2,na\n"
            + "Ada Invented,2026-05-04 10:02:00,3,9999\nAda Invented,2026-05-04 10:03:00,4,0\nAda Invented,2026-05-04 10:04:00,5,\nAda Invented,2026-05-04 10:05:00,6,41.5\n");
        var file = study.Ingest().Counted("bay/a.csv", taken: 6);
        Assert.Equal(41.5, Assert.Single(study.Query("SELECT club_head_speed FROM captures WHERE club_head_speed IS NOT NULL"))[0].GetDouble());
        Assert.Equal(0, file.GetProperty("rejected_cells").GetInt32());
    }

    [Fact]
    public void ATextInANumberColumnIsRejectedWithItsRawText()
    {
        using var study = new TestStudy(SensorMapping.With());
        study.Drop("bay/a.csv", SensorMapping.File() + "Ada Invented,2026-05-04 11:00:00,9,fast\n");
        var file = study.Ingest().Counted("bay/a.csv", taken: 4);
        Assert.Equal(1, file.GetProperty("rejected_cells").GetInt32());
        Assert.Equal("fast", Assert.Single(study.Query("SELECT raw FROM rejects"))[0].GetString());
    }

    [Fact]
    public void ACodeKeepsItsLeadingZeros()
    {
        using var study = new TestStudy(SensorMapping.With("  club: { column: Club }"));
        study.Drop("bay/a.csv", "Player,Time,No,Speed,Club\nAda Invented,2026-05-04 10:00:00,1,41.5,007\n");
        study.Ingest().Counted("bay/a.csv", taken: 1);
        Assert.Equal("007", Assert.Single(study.Query("SELECT club FROM captures"))[0].GetString());
    }

    [Fact]
    public void AUnitThatChangesOverNightIsConvertedByItsHeading()
    {
        using var study = new TestStudy(SensorMapping.With(speed: "{ column: Speed }"));
        study.Drop("bay/1.csv", "Player,Time,No,Speed (mph)\nAda Invented,2026-05-04 10:00:00,1,100\n");
        study.Drop("bay/2.csv", "Player,Time,No,Speed (m/s)\nAda Invented,2026-05-05 10:00:00,1,44\n");
        study.Ingest();
        Assert.Equal([44, 44.704], Speeds(study).Select(speed => Math.Round(speed, 9)).Order());
    }

    [Fact]
    public void AUnitThatChangesUnsaidIsHeldWithTheFactor()
    {
        using var study = new TestStudy(SensorMapping.With());
        study.Drop("bay/1.csv", SensorMapping.File(6, first: 25));
        study.Drop("bay/2.csv", SensorMapping.File(6, "2026-05-05", 25 * 2.2369));
        var intake = study.Ingest(1);
        intake.Became("bay/1.csv", "taken");
        Assert.Contains("mph", intake.Problem("bay/2.csv", "unit-jump").GetProperty("found").GetString()!, StringComparison.Ordinal);
        Assert.Equal(6, Speeds(study).Count);
    }

    [Fact]
    public void AColumnOfImpossibleValuesIsHeldWithADoubtAboutItsUnit()
    {
        using var study = new TestStudy(SensorMapping.With());
        study.Drop("bay/a.csv", SensorMapping.File(6, first: 95));
        Assert.Contains("unit", study.Ingest(1).Problem("bay/a.csv", "column-impossible").GetProperty("mend").GetString()!, StringComparison.Ordinal);
    }

    [Fact]
    public void ANumberCellThatASpreadsheetMadeADateIsRejectedWithItsDateAndItsSerial()
    {
        using var study = new TestStudy(SensorMapping.With(reader: "workbook"));
        study.Drop("bay/a.xlsx", Workbook.Of(
            new[] { "Player", "Time", "No", "Speed" }.Select(Workbook.Text),
            [Workbook.Text("Ada Invented"), Workbook.Text("2026-05-04 10:00:00"), Workbook.Number("1"), Workbook.Number("41.5")],
            [Workbook.Text("Ada Invented"), Workbook.Text("2026-05-04 10:01:00"), Workbook.Number("2"), Workbook.Number("46146", asDate: true)]));
        study.Ingest().Counted("bay/a.xlsx", taken: 2);
        Assert.Equal([41.5], Speeds(study));
        var reject = Assert.Single(study.Query("SELECT raw, detail FROM rejects"));
        Assert.Contains("2026-05-04", reject[0].GetString()!, StringComparison.Ordinal);
        Assert.Contains("46146", reject[1].GetString()!, StringComparison.Ordinal);
    }

    private static List<double> Speeds(TestStudy study) =>
        [.. study.Query("SELECT club_head_speed FROM captures WHERE club_head_speed IS NOT NULL ORDER BY recorded_at").Select(row => row[0].GetDouble())];
}
