using System.Globalization;

namespace SwingStudy.Pipeline.Analyse.Findings;

/// <summary>A player's finding in one plain sentence, from facts alone.</summary>
internal static class PlayerStatement
{
    /// <summary>The sentence.</summary>
    public static string Of(PlayerChange player, Verdict verdict, double confidence)
    {
        var (outcome, contrast, change) = (player.Outcome, player.Contrast, player.Change);
        var name = Lower(outcome.Title);
        if (player.Estimate is not { } estimate)
            return $"{player.Participant}: nothing can be said of {name} from {contrast.From} to {contrast.To}; {CannotTellText.Of(change) ?? change.Estimate.Undefined}.";
        var half = change.Estimate.Interval?.HalfWidth;
        var quantity = Quantity.For(outcome, half is > 0 ? half.Value : estimate);
        var moved = estimate == 0
            ? $"{player.Participant}: {name} did not differ between {contrast.From} and {contrast.To}"
            : $"{player.Participant}: {name} {(estimate > 0 ? "rose" : "fell")} by {quantity.Text(estimate, magnitude: true)} from {contrast.From} to {contrast.To}{Direction(player)}";
        if (verdict == Verdict.CannotTell || change.Estimate.Interval is not { } interval)
            return $"{moved}; whether that exceeds the scatter between days cannot be told, because {CannotTellText.Of(change)}.";
        var limits = string.Create(CultureInfo.InvariantCulture, $"({100 * confidence:0.#} % confidence interval {quantity.Range(interval.Low, interval.High)})");
        return $"{moved} {limits}, {Against(player, quantity)}.";
    }

    private static string Against(PlayerChange player, Quantity quantity)
    {
        var detectable = quantity.Text(player.Change.SmallestDetectableChange ?? 0, magnitude: true);
        var noise = player.Change.ExceedsNoise == true
            ? $"more than the {detectable} that scatter alone can make"
            : $"no more than the {detectable} that scatter alone can make";
        if (player.Outcome.Worthwhile is not { } worthwhile)
            return noise;
        var size = quantity.Text(worthwhile, magnitude: true);
        var chance = string.Create(CultureInfo.InvariantCulture, $"{Percent(player.ProbabilityWorthwhile ?? 0)}");
        return $"{noise}; that the true change is worthwhile (above {size} in that direction) is {chance} likely";
    }

    private static string Percent(double probability) => probability switch
    {
        < 0.01 => "less than 1 %",
        > 0.99 => "more than 99 %",
        _ => string.Create(CultureInfo.InvariantCulture, $"{100 * probability:0} %"),
    };

    private static string Direction(PlayerChange player) => player.IsImprovement switch
    {
        true => ", an improvement",
        false => ", for the worse",
        null => "",
    };

    /// <summary>Sentence case to the middle of a sentence; abbreviations stay.</summary>
    private static string Lower(string title) =>
        title.Length > 1 && char.IsUpper(title[0]) && char.IsLower(title[1]) ? char.ToLowerInvariant(title[0]) + title[1..] : title;
}
