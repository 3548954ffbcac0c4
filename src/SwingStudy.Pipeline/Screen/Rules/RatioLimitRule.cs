namespace SwingStudy.Pipeline.Screen.Rules;

/// <summary>Ball speed over club head speed beyond what a strike can give: one of the two speeds is misread.</summary>
/// <remarks>
/// A centred, square strike gives about (1 + e)/(1 + m/M) = 1.49 (restitution e 0.83, ball 45.93 g, head 200 g); the limit leaves room for the tracked
/// point of the head. Suspect is the speed that lies farther from the player's median of that session and club, measured as a ratio to the median; both
/// are where fewer than three other swings can tell. The ratio of the two falls with either.
/// </remarks>
internal sealed class RatioLimitRule : ScreeningCheck
{
    private const string Ball = "ball_speed";
    private const string Club = "club_head_speed";
    private const string Ratio = "speed_ratio";
    private const int OthersNeeded = 3;

    public override string Name => "ratio-limit";

    public override IEnumerable<RuleHit> Find(ScreenedSwings swings, RuleSetting rule)
    {
        if (!new[] { Ball, Club }.All(name => swings.Variables.Any(variable => variable.Name == name)))
            yield break;
        foreach (var group in swings.BySessionAndClub(Ball))
        {
            List<int> both = [.. group.Where(i => swings.Values(Club)[i] > 0)];
            foreach (var swing in both)
            {
                var ratio = swings.Values(Ball)[swing] / swings.Values(Club)[swing];
                if (ratio >= rule.Limit("minimum") && ratio <= rule.Limit("maximum"))
                    continue;
                var limit = ratio > rule.Limit("maximum") ? $"above {FlagText.Number(rule.Limit("maximum"))}" : $"below {FlagText.Number(rule.Limit("minimum"))}";
                var suspects = Suspects(swings, both, swing);
                var detail = $"ball speed over club head speed is {FlagText.Number(Math.Round(ratio, 3))}, {limit}; suspect: {string.Join(" or ", suspects)}";
                foreach (var suspect in suspects)
                    yield return new RuleHit(swing, suspect, detail);
                if (swings.Variables.Any(variable => variable.Name == Ratio))
                    yield return new RuleHit(swing, Ratio, detail);
            }
        }
    }

    private static string[] Suspects(ScreenedSwings swings, List<int> group, int swing)
    {
        List<int> others = [.. group.Where(i => i != swing)];
        if (others.Count < OthersNeeded)
            return [Ball, Club];
        var (ball, club) = (Distance(swings, others, swing, Ball), Distance(swings, others, swing, Club));
        return ball > club ? [Ball] : club > ball ? [Club] : [Ball, Club];
    }

    private static double Distance(ScreenedSwings swings, List<int> others, int swing, string variable)
    {
        var median = Middle.Median(others.Select(i => swings.Values(variable)[i]));
        return median > 0 ? Math.Abs(Math.Log(Math.Max(swings.Values(variable)[swing], 1e-9) / median)) : 0;
    }
}
