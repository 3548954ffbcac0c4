namespace SwingStudy.Pipeline.Screen.Rules;

/// <summary>Club head speed by the sensor against that by the marks: a swing at which their ratio is far from its middle of the session is misread by one.</summary>
/// <remarks>The middle takes up that both follow different points of the head. Which of the two is wrong is a person's to say.</remarks>
internal sealed class DeviceDisagreementRule : ScreeningCheck
{
    private const string Club = "club_head_speed";

    public override string Name => "device-disagreement";

    public override IEnumerable<RuleHit> Find(ScreenedSwings swings, RuleSetting rule)
    {
        if (swings.Variables.All(variable => variable.Name != Club))
            yield break;
        var marks = swings.Computed(Club);
        foreach (var group in swings.BySessionAndClub(Club))
        {
            // Where marks alone gave the value both are one.
            List<int> both = [.. group.Where(i => marks[i] > 0 && swings.Values(Club)[i] > 0 && swings.Values(Club)[i] != marks[i])];
            if (both.Count < rule.Limit("minimum_swings"))
                continue;
            var middle = Middle.Median(both.Select(i => swings.Values(Club)[i] / marks[i]));
            foreach (var swing in both)
            {
                var ratio = swings.Values(Club)[swing] / marks[swing];
                if (Math.Abs((ratio / middle) - 1) > rule.Limit("tolerance"))
                {
                    yield return new RuleHit(swing, Club,
                        $"the sensor says {FlagText.Value(swings.Values(Club)[swing], "m/s")}, the marks {FlagText.Value(marks[swing], "m/s")}: a ratio of {FlagText.Number(Math.Round(ratio, 3))} where {FlagText.Number(Math.Round(middle, 3))} is the middle of {both.Count} swings");
                }
            }
        }
    }
}
