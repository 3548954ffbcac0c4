using System.Globalization;

namespace SwingStudy.Pipeline.Analyse.Findings;

/// <summary>A player's finding in a few plain sentences, from facts alone.</summary>
internal static class PlayerStatement
{
    /// <summary>The sentences.</summary>
    public static string Of(PlayerChange player, Verdict verdict, double confidence)
    {
        var (from, to) = (player.Compared.From.Plain, player.Compared.To.Plain);
        var name = Plain.Lower(player.Outcome.Title);
        if (!player.IsMeasured)
            return $"{player.Participant}: {name} was not measured in this player in {from} or {to}.";
        if (player.Estimate is not { } estimate)
            return $"{player.Participant}: nothing can be said of {name} from {from} to {to}: {player.CannotTell?.Text ?? player.Change.Estimate.Undefined}.";
        var quantity = player.Compared.Quantity;
        var moved = estimate == 0
            ? $"{player.Participant}: {name} did not differ between {from} and {to}"
            : $"{player.Participant}: {name} {Verb(player, quantity.Text(estimate, magnitude: true))} from {from} to {to}{Direction(player)}";
        if (verdict == Verdict.CannotTell || player.Change.Estimate.Interval is not { } interval)
            return $"{moved}, but nobody can tell what that change is worth: {player.CannotTell?.Text ?? "its uncertainty is unknown"}.";
        var limits = string.Create(CultureInfo.InvariantCulture, $"({100 * confidence:0.#} % confidence interval {quantity.Range(interval.Low, interval.High)})");
        return $"{moved} {limits}. {Against(player, quantity)}";
    }

    private static string Verb(PlayerChange player, string amount) => player.Outcome.Kind is OutcomeKind.Moment or OutcomeKind.MomentBefore
        ? $"came {amount} {Plain.Direction(player.Outcome.Kind, player.Estimate!.Value)}"
        : $"{(player.Estimate > 0 ? "rose" : "fell")} by {amount}";

    private static string Against(PlayerChange player, Quantity quantity)
    {
        var detectable = quantity.Text(player.Change.SmallestDetectableChange ?? 0, magnitude: true);
        var noise = $"That is {(player.ExceedsNoise ? "more" : "no more")} than the {detectable} that this player's own scatter can make.";
        return player.Outcome.Worthwhile is { } worthwhile
            ? $"{noise} That the true change is worthwhile, above {quantity.Text(worthwhile, magnitude: true)} in that direction, is {Plain.Likely(player.ProbabilityWorthwhile ?? 0)}."
            : noise;
    }

    /// <summary>A change that scatter can make is not praised.</summary>
    private static string Direction(PlayerChange player) => (player.ExceedsNoise ? player.IsImprovement : null) switch
    {
        true => ", an improvement",
        false => ", for the worse",
        null => "",
    };
}
