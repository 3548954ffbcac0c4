using System.Globalization;
using SwingStudy.Motion.Events;
using SwingStudy.Motion.Kinematics;
using SwingStudy.Motion.Signals;

namespace SwingStudy.Pipeline.Measure.Swings;

/// <summary>How curves were processed, in words: stored with curves and values.</summary>
internal static class MeasureMethods
{
    /// <summary>Of forces.</summary>
    public static string Forces(SwingSignals swing)
    {
        var zero = swing.Forces!.IsZeroed ? "zeroed on empty plates" : "not zeroed: no recording of empty plates";
        var downswing = double.IsNaN(swing.TopS) ? "downswing from least vertical force" : "downswing from top";
        var joined = swing.Forces.JoinMethod is { } join ? $"{join}; " : "";
        return $"{new LowPass(swing.Plan.ForceCutoffHz).Method}; {joined}{zero}; {downswing}; impact: {swing.Forces.Impact.Method}; body weight: {swing.Session.BodyWeightMethod}";
    }

    /// <summary>Of marks.</summary>
    public static string Motion(SwingSignals swing) => string.Create(CultureInfo.InvariantCulture,
        $"body: {new LowPass(swing.Plan.BodyCutoffHz).Method}; hands: polynomial of degree {MarkerSwing.HandDegree} over {1000 * swing.Plan.HandWindowS:0.#} ms; club: of degree {MarkerSwing.ClubDegree} over {1000 * swing.Plan.ClubWindowS:0.#} ms, before impact alone; head at impact: turn about the hands over {1000 * ClubAtImpact.WindowS:0.#} ms; impact: {swing.Motion!.Impact.Method}; top: {swing.Events.Found.FirstOrDefault(e => e.Name == EventNames.Top)?.Method ?? "not found"}");
}
