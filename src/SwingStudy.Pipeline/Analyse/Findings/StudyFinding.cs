using System.Globalization;
using SwingStudy.Pipeline.Analyse.Group;

namespace SwingStudy.Pipeline.Analyse.Findings;

/// <summary>What an outcome did over all players: how many changes are supported, the mean change, and how far players differ.</summary>
/// <remarks>
/// <c>supported</c>: planned, the interval of the mean over players excludes zero and still does after adjustment, and at least half of the players that
/// could be judged have a supported change of its sign, and no test of players drawn together that could have been significant is far from it;
/// <c>suggestive</c>: one of the two; <c>cannot tell</c>: fewer than two players could be judged.
/// </remarks>
/// <param name="Verdict">The verdict.</param>
/// <param name="Statement">A few sentences.</param>
internal sealed record StudyFinding(Verdict Verdict, string Statement)
{
    private const int LeastPlayers = 2;

    /// <summary>Sums up the players.</summary>
    /// <param name="players">All players with their verdicts in one comparison.</param>
    /// <param name="mean">The mean change over players; null when there is none.</param>
    /// <param name="spread">Standard deviation of true changes; null when there is none.</param>
    /// <param name="isDrawUnconvinced">Whether players were drawn together and the test of their draw, which could have spoken for a change, does not.</param>
    /// <param name="confidence">Confidence level.</param>
    public static StudyFinding Of(IReadOnlyList<(PlayerChange Change, Verdict Verdict)> players, GroupEffect? mean, GroupEffect? spread, bool isDrawUnconvinced, double confidence)
    {
        var first = players[0].Change;
        var measured = players.Count(player => player.Change.IsMeasured);
        var judged = players.Where(player => player.Verdict != Verdict.CannotTell).ToList();
        var what = $"{Plain.Lower(first.Outcome.Title)} from {first.Compared.From.Plain} to {first.Compared.To.Plain}";
        if (judged.Count < LeastPlayers)
        {
            return new StudyFinding(Verdict.CannotTell, string.Create(CultureInfo.InvariantCulture,
                $"Study: {judged.Count} of {Counted(measured, players.Count)} could be judged in {what}; one player says nothing of others."));
        }

        var supported = judged.Where(player => player.Verdict == Verdict.Supported).ToList();
        var better = supported.Count(player => player.Change.IsImprovement == true);
        var worse = supported.Count(player => player.Change.IsImprovement == false);
        var direction = better + worse == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $" ({better} better, {worse} worse)");
        var count = string.Create(CultureInfo.InvariantCulture, $"Study: a change in {what} is supported for {supported.Count} of {judged.Count} players who could be judged{direction}.{(measured < players.Count ? $" It was measured in {measured} of {players.Count} players." : "")}");
        if (mean?.Estimate is not { Value: { } value, Interval: { } interval })
            return new StudyFinding(Verdict.NotShown, $"{count} A mean over players cannot be given: {mean?.Estimate.Undefined ?? "no player's change has an error"}.");
        var sameSign = supported.Count(player => Math.Sign(player.Change.Estimate!.Value) == Math.Sign(value));
        var excludesZero = !interval.Contains(0) && (mean.AdjustedP ?? mean.Estimate.P) is var p && (p is null || p <= 1 - confidence);
        var most = 2 * sameSign >= judged.Count;
        var verdict = excludesZero && most && first.Basis == Basis.Planned && !isDrawUnconvinced ? Verdict.Supported : excludesZero || (most && supported.Count > 0) ? Verdict.Suggestive : Verdict.NotShown;
        return new StudyFinding(verdict, $"{count} {MeanText(first.Outcome, mean, spread, confidence)}");
    }

    /// <summary>Players in whom the outcome was measured, and how many there are where that is fewer.</summary>
    private static string Counted(int measured, int all) => measured == all
        ? string.Create(CultureInfo.InvariantCulture, $"{all} {(all == 1 ? "player" : "players")}")
        : string.Create(CultureInfo.InvariantCulture, $"{measured} {(measured == 1 ? "player" : "players")} in whom it was measured ({all} took part)");

    private static string MeanText(OutcomeSetting outcome, GroupEffect mean, GroupEffect? spread, double confidence)
    {
        var (value, interval) = (mean.Estimate.Value!.Value, mean.Estimate.Interval!.Value);
        var quantity = Quantity.For(outcome, interval.HalfWidth > 0 ? interval.HalfWidth : value);
        var level = string.Create(CultureInfo.InvariantCulture, $"{100 * confidence:0.#} %");
        var text = $"The mean change over players is {quantity.Text(value)} ({level} confidence interval {quantity.Range(interval.Low, interval.High)}).";
        if (mean.Prediction is { } prediction)
            text += $" The true change of a further player may lie anywhere from {quantity.Range(prediction.Low, prediction.High)} ({level} prediction interval).";
        if (spread?.Estimate.Value is { } deviation)
        {
            text += deviation > 0
                ? string.Create(CultureInfo.InvariantCulture, $" True changes differ between players by about {quantity.Text(deviation, magnitude: true)} (standard deviation; {mean.ISquared:0} % of the variation).")
                : " The players' changes do not differ more than their own scatter explains.";
        }

        return text;
    }
}
