using SwingStudy.Domain.Protocols;
using SwingStudy.Domain.Tables;
using SwingStudy.Pipeline.Masking;
using SwingStudy.Pipeline.Query;
using SwingStudy.Pipeline.Tests.Support;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Pipeline.Tests.Masking;

public sealed class PhaseMaskTests
{
    private static readonly MaskedName[] Names =
    [
        new(MaskedName.Phase, "baseline", "K"), new(MaskedName.Phase, "cue", "T"), new(MaskedName.Contrast, "with-cue", "contrast-M"), new(MaskedName.Cue, "press-earlier", "cue-R"),
    ];

    private static readonly PhaseMask Mask = new(Names);

    [Fact]
    public void PhasesAreCodesAndAnUnknownPhaseIsNotShown()
    {
        var rows = new RowSetBuilder(StudyTables.Swings(Some.Dictionary));
        foreach (var phase in new[] { "baseline", "cue", "other", null })
            rows.Add(("swing_id", "s"), ("phase", phase), ("club_head_speed", 40.0));

        var masked = Mask.Apply(rows.Build());

        Assert.Equal(["K", "T", null, null], masked.Texts("phase"));
        Assert.Equal([40, 40, 40, 40], masked.Numbers("club_head_speed"));
    }

    [Theory]
    [InlineData(-1.2, -2.0, -0.4)]
    [InlineData(1.2, 0.4, 2.0)]
    public void ADifferenceIsShownBySizeWhateverItsDirection(double estimate, double low, double high)
    {
        var masked = Mask.Apply(Effect("difference", estimate, low, high));

        Assert.Equal("contrast-M", masked.Texts("contrast")[0]);
        Assert.Equal((1.2, 0.4, 2.0), (masked.Numbers("estimate")[0], masked.Numbers("ci_low")[0], masked.Numbers("ci_high")[0]));
        Assert.Null(masked.Integers("n_from")[0]);
        Assert.Null(masked.Texts("undefined")[0]);
    }

    [Fact]
    public void AMeasureWhoseSizeTellsItsDirectionIsWithheld() =>
        Assert.True(double.IsNaN(Mask.Apply(Effect("percent-change", 5, 1, 9)).Numbers("estimate")[0]));

    [Fact]
    public void ACurveTestShowsWhereCurvesDifferAndNotWhichIsHigher()
    {
        var rows = new RowSetBuilder(StudyTables.CurveTests);
        rows.Add(("participant", "P01"), ("contrast", "with-cue"), ("from_pct", 140.0), ("statistic", 5.0), ("direction", "higher"), ("permuted", "sessions"), ("sessions_from", 5));

        var masked = Mask.Apply(rows.Build());

        Assert.Equal(("contrast-M", 140.0, 5.0), (masked.Texts("contrast")[0], masked.Numbers("from_pct")[0], masked.Numbers("statistic")[0]));
        Assert.Equal(((string?)null, (long?)null), (masked.Texts("direction")[0], masked.Integers("sessions_from")[0]));
    }

    [Fact]
    public void AFindingKeepsItsVerdictAndLosesItsWords()
    {
        var rows = new RowSetBuilder(StudyTables.Findings);
        rows.Add(("scope", "player"), ("participant", "P01"), ("outcome", "club_head_speed"), ("contrast", "with-cue"), ("verdict", "supported"), ("statement", "P01 rose from baseline to cue"));

        var masked = Mask.Apply(rows.Build());

        Assert.Equal(("supported", null), (masked.Texts("verdict")[0], masked.Texts("statement")[0]));
    }

    /// <summary>Whatever columns tables of contrasts have or get: a text that is not known to be harmless is not shown.</summary>
    [Fact]
    public void NoTextOfAnyTableTellsANameThroughTheMask()
    {
        const string telling = "baseline cue with-cue press-earlier";
        string[] harmless = ["swing_id", "capture_id", "participant", "session", "club", "ball", "surface", "outcome", "channel", "measure", "term", "verdict", "scope", "unit", "method", "permuted"];
        foreach (var table in StudyTables.All(Some.Dictionary).Where(table => table.Columns.Any(column => column.Name == "contrast")))
        {
            var rows = new RowSetBuilder(table);
            rows.Add([.. table.Columns.Where(column => column.Kind == ColumnKind.Text && !harmless.Contains(column.Name)).Select(column => (column.Name, (object?)telling))]);
            var masked = Mask.Apply(rows.Build());
            Assert.All(table.Columns.Where(column => column.Kind == ColumnKind.Text && !harmless.Contains(column.Name)), column => Assert.Null(masked.Texts(column.Name)[0]));
        }
    }

    [Fact]
    public void SqlSeesWhatRowsShow()
    {
        using var study = new TestStudy();
        var effects = study.Tables.Table(StudyTables.Effects);
        var rows = Effect("difference", -1.2, -2.0, -0.4);
        using (var writer = effects.NewFile("P01", "P01"))
        {
            writer.Append(rows);
            TestStudy.Value(effects.Commit(new TableChange { Adds = [writer.Complete()], Info = new CommitInfo { Stage = "effects" } }));
        }

        var view = new QueryView("effects", StudyTables.Effects, [.. effects.Files().Select(effects.FullPath)]) { Replaced = Mask.Sql(StudyTables.Effects) };
        Assert.True(ReadOnlySql.Run("SELECT contrast, estimate, ci_low, ci_high, n_from, undefined FROM effects", [view]).Succeeded(out var result));
        using (result)
            Assert.Equal(["contrast-M", 1.2, 0.4, 2.0, null, null], Assert.Single(result.Rows()));
    }

    [Fact]
    public void ATextGetsCodesForWholeNamesAlone() => Assert.Equal(
        """{"phase":"K","contrast":"contrast-M","note":"rebaseline with-cues"}""",
        Mask.Text("""{"phase":"baseline","contrast":"with-cue","note":"rebaseline with-cues"}"""));

    private static RowSet Effect(string measure, double estimate, double low, double high)
    {
        var rows = new RowSetBuilder(StudyTables.Effects);
        rows.Add(("participant", "P01"), ("outcome", "club_head_speed"), ("contrast", "with-cue"), ("measure", measure), ("estimate", estimate), ("ci_low", low), ("ci_high", high),
            ("n_from", 60), ("n_to", 36), ("undefined", "one session in cue"));
        return rows.Build();
    }
}
