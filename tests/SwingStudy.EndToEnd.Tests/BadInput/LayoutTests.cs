using System.Text;
using SwingStudy.EndToEnd.Tests.Running;

namespace SwingStudy.EndToEnd.Tests.BadInput;

/// <summary>Headings, units rows, footers and encodings that trip programs up.</summary>
public sealed class LayoutTests
{
    [Fact]
    public void AByteOrderMarkAndANoBreakSpaceInHeadingsDoNotHideTheirColumns()
    {
        using var study = new TestStudy(SensorMapping.With(speed: "{ column: Club Speed, unit: m/s }"));
        study.Drop("bay/a.csv", [0xEF, 0xBB, 0xBF, .. Encoding.UTF8.GetBytes(SensorMapping.File().Replace("Speed", "Club\u00A0Speed", StringComparison.Ordinal))]);
        var intake = study.Ingest();
        intake.Counted("bay/a.csv", taken: 3);
        Assert.Contains("\\u00A0", intake.Remark("bay/a.csv", "heading-cleaned").GetProperty("found").GetString()!, StringComparison.Ordinal);
    }

    [Fact]
    public void AUnitsRowIsReadAndCountedAsNotData()
    {
        using var study = new TestStudy(SensorMapping.With("layout: { units_row: true }", speed: "{ column: Speed }"));
        study.Drop("bay/a.csv", "Player,Time,No,Speed\n,,,mph\nAda Invented,2026-05-04 10:00:00,1,100\n");
        study.Ingest().Counted("bay/a.csv", taken: 1, notData: 2);
        Assert.Equal(44.704, Assert.Single(study.Query("SELECT club_head_speed FROM captures"))[0].GetDouble(), 9);
    }

    [Fact]
    public void AUnitsRowThatContradictsTheMappingHoldsTheFile()
    {
        using var study = new TestStudy(SensorMapping.With("layout: { units_row: true }"));
        study.Drop("bay/a.csv", "Player,Time,No,Speed\n,,,mph\nAda Invented,2026-05-04 10:00:00,1,100\n");
        Assert.Contains("bay.yaml:", study.Ingest(1).Problem("bay/a.csv", "unit-mismatch").GetProperty("mend").GetString()!, StringComparison.Ordinal);
    }

    [Fact]
    public void AFooterOfAveragesIsNoSwing()
    {
        using var study = new TestStudy(SensorMapping.With("not_data:\n  - { label: average, when: [{ column: No, is: [Avg] }] }"));
        study.Drop("bay/a.csv", SensorMapping.File() + ",,Avg,41.25\n");
        var file = study.Ingest().Counted("bay/a.csv", taken: 3, notData: 2);
        Assert.Equal(1, file.GetProperty("not_data").GetProperty("average").GetInt32());
    }

    [Fact]
    public void OfTwoEqualHeadingsEachKeepsItsColumn()
    {
        using var study = new TestStudy(SensorMapping.With("  ball_speed: { column: 'Speed#2', unit: m/s }"));
        study.Drop("bay/a.csv", "Player,Time,No,Speed,Speed\nAda Invented,2026-05-04 10:00:00,1,41.5,61.5\n");
        var intake = study.Ingest();
        intake.Counted("bay/a.csv", taken: 1);
        intake.Remark("bay/a.csv", "heading-repeated");
        var row = Assert.Single(study.Query("SELECT club_head_speed, ball_speed FROM captures"));
        Assert.Equal((41.5, 61.5), (row[0].GetDouble(), row[1].GetDouble()));
    }

    [Fact]
    public void AFileInTwoEncodingsIsHeldWithTheLines()
    {
        using var study = new TestStudy(SensorMapping.With("  club: { column: Schläger }"));
        byte[] content = [.. Encoding.UTF8.GetBytes("Player,Time,No,Speed,Schläger\nAda Invented,2026-05-04 10:00:00,1,41.5,Hölzchen\n"),
            .. Encoding.Latin1.GetBytes("Ada Invented,2026-05-04 10:01:00,2,41.5,Hölzchen\n")];
        study.Drop("bay/a.csv", content);
        var problem = study.Ingest(1).Problem("bay/a.csv", "encoding-mixed");
        Assert.Equal(3, problem.GetProperty("row").GetInt32());
        Assert.True(study.Keeps(content));
    }

    [Fact]
    public void PracticeSwingsAreKeptAndCountInNoSwing()
    {
        using var study = new TestStudy(SensorMapping.With("practice:\n  - { label: practice, when: [{ column: Note, is: [practice] }] }\nignore: [Note]"));
        study.Drop("bay/a.csv", "Player,Time,No,Speed,Note\nAda Invented,2026-05-04 10:00:00,1,41.5,practice\nAda Invented,2026-05-04 10:01:00,2,41.75,\n");
        study.Ingest().Counted("bay/a.csv", taken: 2);
        study.Run("session", "add", "P01", "--start", "2026-05-04 09:55", "--phase", "baseline").Expect(0);
        study.Run("run").Expect(0);
        Assert.Equal(2, study.Query("SELECT 1 FROM captures").Count);
        Assert.Equal(41.75, Assert.Single(study.Query("SELECT club_head_speed FROM swings WHERE included"))[0].GetDouble());
    }
}
