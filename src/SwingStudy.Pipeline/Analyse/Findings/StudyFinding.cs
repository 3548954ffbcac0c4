using System.Globalization;
using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Distributions;

namespace SwingStudy.Pipeline.Analyse.Findings;

/// <summary>What a primary outcome did over all players: how many changes are supported, and the mean change.</summary>
/// <remarks>
/// The mean of the players' changes has a t interval over players, each counting once. <c>supported</c>: it excludes zero and at least half of the players
/// that could be judged have a supported change of its sign; <c>suggestive</c>: one of the two; <c>cannot tell</c>: fewer than two players could be judged.
/// </remarks>
/// <param name="Verdict">The verdict.</param>
/// <param name="Statement">One sentence.</param>
internal sealed record StudyFinding(Verdict Verdict, string Statement)
{
    private const int LeastPlayers = 2;

    /// <summary>Sums up the players.</summary>
    public static StudyFinding Of(OutcomeSetting outcome, ContrastSetting contrast, IReadOnlyList<(PlayerChange Change, Verdict Verdict)> players, double confidence)
    {
        var judged = players.Where(player => player.Verdict != Verdict.CannotTell).ToList();
        var supported = judged.Where(player => player.Verdict == Verdict.Supported).ToList();
        var what = $"{outcome.Title.ToLowerInvariant()} from {contrast.From} to {contrast.To}";
        if (judged.Count < LeastPlayers)
        {
            return new StudyFinding(Verdict.CannotTell, string.Create(CultureInfo.InvariantCulture,
                $"Study: {judged.Count} of {players.Count} players could be judged in {what}; one player says nothing of others."));
        }

        var summary = Summary.Of([.. judged.Select(player => player.Change.Estimate!.Value)]);
        var (mean, half) = (summary.Mean!.Value, StudentT.Critical(confidence, summary.Count - 1) * summary.StandardDeviation!.Value / Math.Sqrt(summary.Count));
        var quantity = Quantity.For(outcome, half > 0 ? half : mean);
        var (excludesZero, sameSign) = (Math.Abs(mean) > half, supported.Count(player => Math.Sign(player.Change.Estimate!.Value) == Math.Sign(mean)));
        var most = 2 * sameSign >= judged.Count;
        var verdict = excludesZero && most ? Verdict.Supported : excludesZero || most ? Verdict.Suggestive : Verdict.NotShown;
        var better = supported.Count(player => player.Change.IsImprovement == true);
        var worse = supported.Count(player => player.Change.IsImprovement == false);
        var direction = better + worse == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $" ({better} better, {worse} worse)");
        return new StudyFinding(verdict, string.Create(CultureInfo.InvariantCulture,
            $"Study: a change in {what} is supported for {supported.Count} of {judged.Count} players who could be judged{direction}; the mean change is {quantity.Text(mean)} ({100 * confidence:0.#} % confidence interval over players {quantity.Range(mean - half, mean + half)})."));
    }
}
