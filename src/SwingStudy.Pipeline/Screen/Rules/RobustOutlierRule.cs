namespace SwingStudy.Pipeline.Screen.Rules;

/// <summary>A value far from the middle of the player's session and club.</summary>
/// <remarks>
/// Modified z-score 0.6745 (x − median)/MAD, MAD = median distance from the median; beyond the limit (3.5) in size it is flagged. Sessions with
/// fewer values than <c>minimum_swings</c>, or whose MAD is zero, are not judged. Source: Iglewicz and Hoaglin (1993), How to Detect and Handle
/// Outliers, ASQC, ch. 3.
/// </remarks>
internal sealed class RobustOutlierRule : ScreeningCheck
{
    /// <summary>The median distance of a normal distribution in standard deviations.</summary>
    private const double NormalMedianDistance = 0.6745;

    public override string Name => "robust-outlier";

    public override IEnumerable<RuleHit> Find(ScreenedSwings swings, RuleSetting rule)
    {
        var (limit, least) = (rule.Limit("limit"), rule.Limit("minimum_swings"));
        foreach (var variable in swings.Chosen(rule))
        {
            foreach (var group in swings.BySessionAndClub(variable.Name).Where(group => group.Count >= least))
            {
                double[] values = [.. group.Select(i => swings.Values(variable.Name)[i])];
                var median = Middle.Median(values);
                var distance = Middle.MedianDistance(values, median);
                for (var k = 0; k < values.Length && distance > 0; k++)
                {
                    var z = NormalMedianDistance * (values[k] - median) / distance;
                    if (Math.Abs(z) > limit)
                    {
                        yield return new RuleHit(group[k], variable.Name,
                            $"{FlagText.Value(values[k], variable.Unit)} against a median of {FlagText.Value(median, variable.Unit)} in its session; modified z {FlagText.Number(Math.Round(z, 1))}");
                    }
                }
            }
        }
    }
}
