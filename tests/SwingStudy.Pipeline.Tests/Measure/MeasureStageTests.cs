using NodaTime;
using SwingStudy.Domain.Declarations;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Tables;
using SwingStudy.Pipeline.Measure;
using SwingStudy.Pipeline.Tests.Support;
using SwingStudy.Storage.Registry;

namespace SwingStudy.Pipeline.Tests.Measure;

public sealed class MeasureStageTests
{
    private static readonly SessionRecord Session = new()
    {
        Id = "P01-20260907-1",
        Participant = new ParticipantId("P01"),
        StartedAt = Some.Morning,
        StartedLocal = new LocalDateTime(2026, 9, 7, 10, 0),
        Phase = "baseline",
        Club = "iron",
        Surface = "mat",
        Variables = """{"air_temperature": 18.5}""",
    };

    [Fact]
    public void ConditionsComeFromTheSessionUnlessReadPerSwing()
    {
        CaptureRow[] rows = [.. CaptureRow.At("strike", 0, 30)];
        rows[1].Values["club"] = "driver";

        var swings = Measure(rows);

        Assert.Equal(["iron", "driver"], swings.Texts("club"));
        Assert.Equal(["mat", "mat"], swings.Texts("surface"));
        Assert.Equal([18.5, 18.5], swings.Numbers("air_temperature"));
        Assert.Equal(["baseline", "baseline"], swings.Texts("phase"));
        Assert.Equal([1L, 2L], swings.Integers("sequence"));
    }

    [Fact]
    public void APreferredSourceWinsAndOthersFillItsGaps()
    {
        double[] times = [0, 31, 58, 97, 121, 160];
        CaptureRow[] strike = [.. CaptureRow.At("strike", times)], plates = [.. CaptureRow.At("plates", times)];
        for (var i = 0; i < times.Length; i++)
            (strike[i].Values["club_head_speed"], plates[i].Values["club_head_speed"]) = (i == 2 ? null : 40.0, 41.0);

        Assert.Equal([40, 40, 41, 40, 40, 40], Measure([.. strike, .. plates]).Numbers("club_head_speed"));
    }

    [Fact]
    public void MomentsAreAveragedOverTheWindow()
    {
        CaptureRow[] band = [.. CaptureRow.At("band", 7.5, 8, 9, 20)];
        foreach (var (row, value) in band.Zip([50.0, 60.0, 70.0, 10.0]))
            row.Values["attention_level"] = value;
        Assert.Equal([60], Measure([.. CaptureRow.At("strike", 10), .. band]).Numbers("attention_level"));
    }

    [Fact]
    public void ADerivedValueIsComputedOnlyWhereNoneWasRead()
    {
        CaptureRow[] rows = [.. CaptureRow.At("strike", 0, 30, 60)];
        foreach (var row in rows)
            (row.Values["club_head_speed"], row.Values["ball_speed"]) = (40.0, 56.0);
        rows[1].Values["speed_ratio"] = 1.39;
        rows[2].Values["ball_speed"] = null;
        Assert.Equal([1.4, 1.39, double.NaN], Measure(rows).Numbers("speed_ratio"));
    }

    [Fact]
    public void PracticeSwingsKeepTheirPlaceAndSaySo()
    {
        CaptureRow[] rows = [.. CaptureRow.At("strike", 0, 30)];
        rows[0] = rows[0] with { IsPractice = true };
        Assert.Equal([true, false], Measure(rows).Booleans("is_practice"));
    }

    [Fact]
    public void TheOrderOfRowsDoesNotMatter()
    {
        CaptureRow[] rows = [.. CaptureRow.At("strike", 0, 31, 58, 97), .. CaptureRow.At("plates", 1, 32, 59, 98)];
        foreach (var row in rows)
            row.Values["club_head_speed"] = 30.0 + row.Row;
        var captures = Some.Captures(rows);
        var links = Body.Run("link", "links", [captures], Session);
        var measures = Body.Run("measure", "measures", [captures, links], Session).Text();
        for (var seed = 1; seed < 6; seed++)
            Assert.Equal(measures, Body.Run("measure", "measures", [captures.Shuffled(seed), links], Session).Text());
    }

    [Fact]
    public void EveryFormulaIsTheOneThatTheDictionaryStates()
    {
        var outcome = DictionaryReader.Read(Path.Combine(Repository.Root, "data-dictionary"));
        Assert.True(outcome.Succeeded(out var dictionary, out var problems), string.Join('\n', problems));
        foreach (var derived in DerivedVariable.All)
        {
            Assert.Equal(dictionary[derived.Name].Formula, derived.Formula);
            Assert.All(derived.Needs, need => Assert.Contains(need, derived.Formula, StringComparison.Ordinal));
            Assert.All(derived.Needs, need => Assert.True(dictionary.TryGet(need, out _), need));
        }
    }

    // Hand calculations; the dictionary states the formulas.
    [Theory]
    [InlineData("speed_ratio", 1.4, 56.0, 40.0)]
    [InlineData("face_to_path", -10.0, 175.0, -175.0)]
    [InlineData("tempo_ratio", 3.0, 0.75, 0.25)]
    [InlineData("grip_speed_drop", 20.0, 10.0, 8.0)]
    [InlineData("separation_top", 45.0, 95.0, 50.0)]
    [InlineData("vertical_impulse_downswing_bw", 0.05, 35.0, 700.0)]
    public void FormulasGiveWhatAPencilGives(string name, double expected, params double[] values) =>
        Assert.Equal(expected, DerivedVariable.All.Single(derived => derived.Name == name).Compute(values), 12);

    [Theory]
    [InlineData(180, 180)]
    [InlineData(-180, 180)]
    [InlineData(190, -170)]
    [InlineData(-540, 180)]
    [InlineData(725, 5)]
    public void AnglesAreWrappedIntoTheHalfOpenTurn(double degrees, double expected) => Assert.Equal(expected, WrappedAngle.Of(degrees));

    private static RowSet Measure(IEnumerable<CaptureRow> rows)
    {
        var captures = Some.Captures(rows);
        return Body.Run("measure", "measures", [captures, Body.Run("link", "links", [captures], Session)], Session);
    }
}
