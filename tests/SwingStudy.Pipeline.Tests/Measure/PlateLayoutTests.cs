using System.Globalization;
using SwingStudy.Domain.Tables;
using SwingStudy.Motion.Tests.Support;
using SwingStudy.Pipeline.Tests.Support;

namespace SwingStudy.Pipeline.Tests.Measure;

/// <summary>Plates that record apart, one plate under both feet, and a plate under one foot alone, all of the same invented movement.</summary>
public sealed class PlateLayoutTests
{
    private static readonly RecordedSession Apart = new() { Plates = PlateLayout.Apart, TriggerLateMs = [2, -3, 1, 0, -2, 3, -1, 0] };
    private static readonly RowSet OfApart = Apart.Measure("curve_measures");
    private static readonly RowSet OfOne = new RecordedSession { Plates = PlateLayout.One }.Measure("curve_measures");
    private static readonly RowSet OfLead = new RecordedSession { Plates = PlateLayout.LeadOnly, HasQuiet = true }.Measure("curve_measures");

    [Fact]
    public void PlatesOfTwoRecordingsAreJoinedAtContact()
    {
        Near(OfApart, "body_weight", RecordedSession.WeightN, 0.5);
        Near(OfApart, "vertical_peak_total", 1.5, 0.01);
        Near(OfApart, "vertical_peak_total_time", -40, 2);
        Near(OfApart, "unweight_min_total", 0.85, 0.005);
        Near(OfApart, "lead_share_top", 27, 0.3);
        Near(OfApart, "lead_share_impact", 100 * Apart.LeadShare(0), 1);
        Near(OfApart, "free_moment_peak_trail", 15, 0.2);
        Near(OfApart, "cop_along_top", 27 + (100 * 0.01 / 0.47), 0.4);
        Near(OfApart, "cop_toe_impact", 20, 0.5);
        var method = OfApart.Texts("method")[Row(OfApart, "vertical_peak_total")];
        Assert.Contains("plates of plate-lead (1000 Hz) and plate-trail (400 Hz) joined at contact, read at 1000 Hz", method, StringComparison.Ordinal);
        Assert.Equal("plate-lead + plate-trail", OfApart.Texts("source")[Row(OfApart, "vertical_peak_total")]);
    }

    [Fact]
    public void StandingThatTwoDevicesRecordedIsOneWeight()
    {
        var values = (Apart with { HasQuiet = true, HasMarkers = false }).Measure("curve_measures");
        Near(values, "body_weight", RecordedSession.WeightN, 0.5);
        Assert.Contains("body weight: quiet standing", values.Texts("method")[Row(values, "body_weight")], StringComparison.Ordinal);
    }

    [Fact]
    public void TriggersThatContradictTheClocksJoinNothing()
    {
        // Without markers only triggers tell contact; that of the trail plate in the fourth swing comes 40 ms late.
        var session = Apart with { HasMarkers = false, TriggerLateMs = [2, -3, 1, 40, -2, 3, -1, 0] };
        var values = session.Measure("curve_measures");
        int[] total = [.. Enumerable.Range(0, values.Count).Where(i => values.Texts("variable")[i] == "vertical_peak_total")];
        Assert.Equal(8, total.Length);
        foreach (var (row, i) in total.Select((row, i) => (row, i)))
        {
            Assert.Equal(i == 3, double.IsNaN(values.Numbers("value")[row]));
            if (i == 3)
                Assert.Matches("^the plates cannot be joined: contact in the recordings of plate-lead and plate-trail is (3[7-9]|4[0-3]) ms further apart than their clocks over 7 swings say", values.Texts("reason")[row]);
            else
                Assert.Equal(1.5, values.Numbers("value")[row], 0.015);
        }
    }

    [Fact]
    public void ContactThatMarkersHeardJoinsPlatesInSpiteOfALateTrigger()
    {
        var values = (Apart with { TriggerLateMs = [2, -3, 1, 40, -2, 3, -1, 0] }).Measure("curve_measures");
        Assert.All(Enumerable.Range(0, values.Count).Where(i => values.Texts("variable")[i] == "vertical_peak_total"), row => Assert.Equal(1.5, values.Numbers("value")[row], 0.01));
    }

    [Fact]
    public void OnePlateUnderBothFeetGivesWhatBothFeetDo()
    {
        Near(OfOne, "body_weight", RecordedSession.WeightN, 0.5);
        Near(OfOne, "vertical_peak_total", 1.5, 0.01);
        Near(OfOne, "unweight_min_time", -200, 3);
        var usual = new RecordedSession().Measure("curve_measures");
        foreach (var name in new[] { "vertical_impulse_downswing", "target_impulse_downswing", "cop_along_range", "cop_along_speed_peak", "cop_toe_impact", "pivot_moment_peak" })
            Near(OfOne, name, Value(usual, name), 1e-3 * Math.Abs(Value(usual, name)));
        foreach (var name in new[] { "lead_share_top", "vertical_peak_lead", "cop_along_top", "free_moment_peak_lead" })
        {
            Assert.True(double.IsNaN(Value(OfOne, name)), name);
            Assert.Contains("both feet stood on one plate", OfOne.Texts("reason")[Row(OfOne, name)], StringComparison.Ordinal);
        }
    }

    [Fact]
    public void APlateUnderOneFootGivesThatFootAloneAndNoWeight()
    {
        // Even standing was recorded by that plate alone: half the weight is no weight.
        Assert.Contains("only the lead plate was recorded: body weight needs both feet on plates", OfLead.Texts("reason")[Row(OfLead, "body_weight")], StringComparison.Ordinal);
        Near(OfLead, "free_moment_peak_lead", 15, 0.2);
        var m = Apart.Movement;
        Near(OfLead, "vertical_peak_lead_time", 1000 * InventedSwing.Greatest(t => RecordedSession.Vertical(t) * Apart.LeadShare(t), m.TopS, 0.1).Time, 2);
        Assert.Contains("only the lead plate was recorded", OfLead.Texts("reason")[Row(OfLead, "target_impulse_downswing")], StringComparison.Ordinal);
        Assert.Contains("only the lead plate was recorded", OfLead.Texts("reason")[Row(OfLead, "lead_share_impact")], StringComparison.Ordinal);
    }

    private static void Near(RowSet rows, string variable, double expected, double tolerance)
    {
        var value = Value(rows, variable);
        Assert.True(Math.Abs(value - expected) <= tolerance, string.Create(CultureInfo.InvariantCulture, $"{variable}: expected {expected}, got {value}: {rows.Texts("reason")[Row(rows, variable)]}"));
    }

    private static double Value(RowSet rows, string variable) => rows.Numbers("value")[Row(rows, variable)];

    private static int Row(RowSet rows, string variable) => Enumerable.Range(0, rows.Count).First(i => rows.Texts("variable")[i] == variable);
}
