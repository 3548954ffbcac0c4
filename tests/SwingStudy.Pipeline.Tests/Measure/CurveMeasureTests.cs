using System.Globalization;
using SwingStudy.Domain.Curves;
using SwingStudy.Domain.Tables;
using SwingStudy.Motion.Kinematics;
using SwingStudy.Motion.Tests.Support;
using SwingStudy.Pipeline.Measure.Curves;
using SwingStudy.Pipeline.Tests.Support;

namespace SwingStudy.Pipeline.Tests.Measure;

public sealed class CurveMeasureTests
{
    private static readonly RecordedSession Usual = new();
    private static readonly IReadOnlyDictionary<string, RowSet> All = Usual.Measured();
    private static readonly RowSet Values = All["curve_measures"];

    /// <summary>Three swings are enough for clocks and show what one device lost.</summary>
    private static readonly RecordedSession Few = Usual with { Swings = 3 };

    [Fact]
    public void MarkersGiveWhatTheMovementDid()
    {
        var m = Usual.Movement;
        // One per cent of speed is asked of markers, 1.5 degrees of direction.
        Near("club_head_speed", InventedSwing.Speed(m.Head, 0), 0.01 * InventedSwing.Speed(m.Head, 0));
        var v = m.Head(0) - m.Head(-1e-6);
        Near("attack_angle", 180 / Math.PI * Math.Atan2(v.Y, Math.Sqrt((v.X * v.X) + (v.Z * v.Z))), 1.5);
        Near("club_path_angle", 180 / Math.PI * Math.Atan2(v.Z, v.X), 1.5);
        Near("grip_speed_peak", InventedSwing.Greatest(t => InventedSwing.Speed(m.Grip, t), m.TopS, -0.001).Value, 0.15);
        Near("t_top", m.TopS, 0.004);
        Near("t_transition", m.TransitionS, 0.015);
        Near("pelvis_turn_top", m.PelvisTurn(m.TopS), 0.5);
        Near("trunk_turn_top", 1.8 * m.PelvisTurn(m.TopS), 0.5);
        Near("trail_knee_flexion_top", m.KneeDegrees(m.TopS), 0.5);
        Near("pelvis_drop", -40, 1);
        Near("forearm_shaft_top", 180 - (1.5 * 180 / Math.PI), 1);
        Near("forearm_shaft_impact", 180, 1.5);
        // The turn of the club is greatest at impact.
        var turn = Angles.Included(m.Head(0) - m.Grip(0), m.Head(-1e-5) - m.Grip(-1e-5)) / 1e-5;
        Near("peak_turn_speed_club", turn, 0.01 * turn);
        Near("peak_time_club", 0, 0.5);
        // The trunk turns 1.8 times as far as the pelvis.
        double Trunk(double t) => Math.Abs(m.PelvisTurn(t + 1e-4) - m.PelvisTurn(t - 1e-4));
        Near("peak_time_trunk_past_impact", 1000 * InventedSwing.Greatest(Trunk, m.TopS, 0.1).Time, 8);
        var lowest = Enumerable.Range(-400, 801).Select(i => m.Head(i * 1e-4)).MinBy(place => place.Y);
        Near("low_point_along", 1000 * (lowest.X - m.Head(0).X), 8);
        Near("low_point_below_contact", 1000 * (m.Head(0).Y - lowest.Y), 0.5);
        Near("low_point_height", 1000 * (lowest.Y - m.Head(-1.4).Y), 0.5);
    }

    [Fact]
    public void CurvesOfTheClubEndAtImpactAsTheMovementDoes()
    {
        var m = Usual.Movement;
        var rows = All["swing_curves"];
        var (rates, firsts, values) = (rows.Numbers("sample_rate_hz"), rows.Numbers("t0_s"), ((NumberListColumn)rows["values"]).Values);
        var curves = Enumerable.Range(0, rows.Count).Where(i => rows.Texts("channel")[i] == "club_head_speed").ToList();
        Assert.Equal(Usual.Swings, curves.Count);
        foreach (var row in curves)
        {
            var late = values[row]!.Select((speed, i) => (Time: firsts[row] + (i / rates[row]), Speed: speed)).Where(sample => sample.Time is > -0.02 and <= 0 && !double.IsNaN(sample.Speed)).ToList();
            Assert.True(late.Count >= 4);
            Assert.All(late, sample => Assert.Equal(1, sample.Speed / InventedSwing.Speed(m.Head, sample.Time), 0.01));
        }
    }

    [Fact]
    public void PlatesGiveWhatTheFeetDid()
    {
        Near("body_weight", RecordedSession.WeightN, 0.5);
        Near("vertical_peak_total", 1.5, 0.01);
        Near("vertical_peak_total_time", -40, 2);
        Near("unweight_min_total", 0.85, 0.005);
        Near("unweight_min_time", -200, 3);
        Near("lead_share_top", 27, 0.3);
        Near("lead_share_impact", 100 * Usual.LeadShare(0), 1);
        Near("target_force_peak_trail", 0.15 * InventedSwing.Greatest(t => RecordedSession.Vertical(t) * (1 - Usual.LeadShare(t)), Usual.Movement.TopS, 0).Value, 0.003);
        // Each foot's free moment is 10 N.m times the summed force in weights, and turns the body to the target.
        Near("free_moment_peak_lead", 15, 0.2);
        // Both feet press 10 mm to the target side of their plates' middles.
        Near("cop_along_top", 27 + (100 * 0.01 / 0.47), 0.4);
        Near("cop_toe_impact", 20, 0.5);
    }

    [Fact]
    public void ALateTriggerIsSetRightByTheContactThatMarkersHeard()
    {
        // The fourth trigger is 40 ms late.
        var times = All["swing_curves"];
        var impacts = Enumerable.Range(0, times.Count).Where(i => times.Texts("channel")[i] == "total_force_y").Select(i => times.Numbers("t0_s")[i]);
        Assert.All(impacts, first => Assert.Equal(-1.6, first, 0.003));
    }

    [Fact]
    public void EveryChannelOfASwingHasANameForPeopleAndNoNameIsOfNone() =>
        Assert.Equal(SwingChannels.Names.Order(StringComparer.Ordinal), Usual.Measure("swing_curves").Texts("channel").OfType<string>().Distinct().Order(StringComparer.Ordinal));

    [Fact]
    public void ALeftHandedPlayerMirrorsARightHandedOne()
    {
        var (mirrored, usual) = ((Few with { IsMirrored = true }).Measure("curve_measures"), Few.Measure("curve_measures"));
        var (left, right) = (mirrored.Numbers("value"), usual.Numbers("value"));
        Assert.Equal(usual.Count, mirrored.Count);
        Assert.True(right.Count(value => !double.IsNaN(value)) > 50 * Few.Swings);
        for (var i = 0; i < usual.Count; i++)
        {
            // A mirror changes no digit that rounding does not.
            Assert.True(double.IsNaN(right[i]) ? double.IsNaN(left[i]) : Math.Abs(left[i] - right[i]) <= 1e-6 * Math.Max(1, Math.Abs(right[i])), $"{usual.Texts("variable")[i]}: {left[i]} and {right[i]}");
            Assert.Equal(usual.Texts("text")[i], mirrored.Texts("text")[i]);
        }
    }

    [Fact]
    public void TheSensorsValueStaysAndTheMarkersStandBesideIt()
    {
        Assert.Equal(40.0, All["measures"].Numbers("club_head_speed")[0]);
        Assert.NotEqual(40.0, Value(Values, "club_head_speed"));
        // What no device delivers comes from curves.
        Assert.Equal(Value(Values, "grip_speed_peak"), All["measures"].Numbers("grip_speed_peak")[0]);
    }

    [Fact]
    public void WhatIsLostIsMissingWithItsReason()
    {
        var values = (Few with { Lost = (-0.1, 0.05) }).Measure("curve_measures");
        Assert.True(double.IsNaN(Value(values, "club_head_speed")));
        Assert.NotNull(Reason(values, "club_head_speed"));
        Assert.False(double.IsNaN(Value(values, "grip_speed_peak")));
        var noMarks = (Few with { HasMarkers = false }).Measure("curve_measures");
        Assert.Contains("top was not found", Reason(noMarks, "lead_share_top"), StringComparison.Ordinal);
        Assert.Contains("right- or left-handed", Reason(noMarks, "toe_force_peak_lead"), StringComparison.Ordinal);
        Assert.False(double.IsNaN(Value(noMarks, "vertical_peak_total")));
        // Plates tell the start by their own rule, and impact; where marks are, theirs hold.
        Assert.Equal(0, Value(noMarks, "t_impact"));
        Assert.InRange(Value(noMarks, "t_start"), Usual.Movement.StartS - 0.1, Usual.Movement.StartS + 0.3);
        Assert.Contains("leaves stillness", noMarks.Texts("method")[Row(noMarks, "t_start")], StringComparison.Ordinal);
    }

    [Fact]
    public void ARecordingThatEndsBeforeImpactHasNoPeaks()
    {
        var values = (Few with { PlateSamples = 780 }).Measure("curve_measures");
        Assert.True(double.IsNaN(Value(values, "vertical_peak_total")));
        Assert.NotNull(Reason(values, "vertical_peak_total"));
        Assert.Equal(27, Value(values, "lead_share_top"), 0.3);
    }

    [Fact]
    public void AFlippedSignIsToldAndNothingIsMeasuredInWeights()
    {
        var values = (Few with { ForceSign = -1 }).Measure("curve_measures");
        Assert.Contains("on the plate, not on the player", Reason(values, "vertical_peak_total"), StringComparison.Ordinal);
        Assert.True(double.IsNaN(Value(values, "body_weight")));
    }

    [Fact]
    public void EachValueCarriesItsMethodAndEachGapItsReason()
    {
        for (var i = 0; i < Values.Count; i++)
        {
            var isMissing = double.IsNaN(Values.Numbers("value")[i]) && Values.Texts("text")[i] is null;
            Assert.Equal(isMissing, Values.Texts("reason")[i] is not null);
            if (!isMissing)
                Assert.False(string.IsNullOrEmpty(Values.Texts("method")[i]), Values.Texts("variable")[i]);
        }
    }

    [Fact]
    public void EveryMeasureIsAVariableOfTheDictionary() =>
        Assert.All(CurveMeasure.All, measure => Assert.True(RecordedSession.Setup.Dictionary.TryGet(measure.Name, out _), measure.Name));

    [Fact]
    public void TheOrderOfRowsDoesNotMatter()
    {
        var session = Few;
        var expected = session.Measure("curve_measures").Text();
        var shuffled = session.Rows().Select(rows => rows.Shuffled(3)).ToList();
        Assert.Equal(expected, Body.Run("measure", "curve_measures", shuffled, RecordedSession.Session, setup: RecordedSession.Setup).Text());
    }

    private static void Near(string variable, double expected, double tolerance)
    {
        var value = Value(Values, variable);
        Assert.True(Math.Abs(value - expected) <= tolerance, string.Create(CultureInfo.InvariantCulture, $"{variable}: expected {expected}, got {value}: {Reason(Values, variable)}"));
    }

    private static double Value(RowSet rows, string variable) => rows.Numbers("value")[Row(rows, variable)];

    private static string? Reason(RowSet rows, string variable) => rows.Texts("reason")[Row(rows, variable)];

    private static int Row(RowSet rows, string variable) => Enumerable.Range(0, rows.Count).First(i => rows.Texts("variable")[i] == variable);
}
