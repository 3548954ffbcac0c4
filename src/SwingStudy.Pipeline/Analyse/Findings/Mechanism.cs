using System.Globalization;
using SwingStudy.Domain.Findings;

namespace SwingStudy.Pipeline.Analyse.Findings;

/// <summary>What in the movement changed in the same comparison: when something happens, or how much.</summary>
internal static class Mechanism
{
    /// <summary>The reasons for one player and comparison; <paramref name="moved"/> holds the player's mechanism outcomes in the same contrast.</summary>
    public static IEnumerable<Reason> Of(IReadOnlyList<(PlayerChange Change, Verdict Verdict)> moved)
    {
        var judged = moved.Where(outcome => outcome.Verdict != Verdict.CannotTell).ToList();
        if (judged.Count == 0)
            yield break;
        var seen = judged.Where(outcome => outcome.Verdict is Verdict.Supported or Verdict.Suggestive).OrderBy(outcome => outcome.Verdict).ToList();
        foreach (var (change, verdict) in seen)
            yield return new Reason(IsTime(change) ? ReasonCode.MovedInTime : ReasonCode.MovedInSize, $"{Text(change)}, {VerdictWords.Of(verdict)}");
        if (seen.Count == 0)
        {
            yield return new Reason(ReasonCode.NothingMoved, string.Create(CultureInfo.InvariantCulture,
                $"{(judged.Count == 1 ? "the one measure of the movement that could be judged did not change" : $"none of the {judged.Count} measures of the movement that could be judged changed")} beyond noise"));
        }
    }

    private static bool IsTime(PlayerChange change) => change.Outcome.Kind is OutcomeKind.Moment or OutcomeKind.MomentBefore or OutcomeKind.Duration;

    private static string Text(PlayerChange change)
    {
        var quantity = change.Compared.Quantity;
        var interval = change.Change.Estimate.Interval is { } i ? $" (interval {Limits(change, quantity, i.Low, i.High)})" : "";
        return $"{Plain.Lower(change.Outcome.Title)}: {quantity.Text(change.Estimate!.Value, magnitude: true)} {Plain.Direction(change.Outcome.Kind, change.Estimate.Value)}{interval}";
    }

    /// <summary>Both limits in the direction of the change where they share it, "27 to 45 ms"; else each with its own, "0.3 less to 9.0 more".</summary>
    private static string Limits(PlayerChange change, Quantity quantity, double low, double high)
    {
        if (low < 0 && high > 0)
            return $"{Side(low)} to {Side(high)}";
        return high <= 0 ? quantity.Range(-high, -low) : quantity.Range(low, high);

        string Side(double limit) => $"{quantity.Text(limit, magnitude: true)} {Plain.Direction(change.Outcome.Kind, limit)}";
    }
}
