namespace SwingStudy.Pipeline.Screen.Rules;

/// <summary>Finds values outside ranges.</summary>
internal static class RangeHits
{
    /// <summary>Values below the low or above the high end; an end that is null does not limit.</summary>
    public static IEnumerable<RuleHit> Outside(
        ScreenedSwings swings, IEnumerable<ScreenedVariable> variables, Func<ScreenedVariable, (double? Low, double? High)> range, string what)
    {
        foreach (var variable in variables)
        {
            var (low, high) = range(variable);
            if (low is null && high is null)
                continue;
            for (var i = 0; i < swings.Count; i++)
            {
                var value = swings.Values(variable.Name)[i];
                if (value < low)
                    yield return new RuleHit(i, variable.Name, $"{FlagText.Value(value, variable.Unit)} is below {FlagText.Value(low.Value, variable.Unit)}, the low end of {what}");
                else if (value > high)
                    yield return new RuleHit(i, variable.Name, $"{FlagText.Value(value, variable.Unit)} is above {FlagText.Value(high.Value, variable.Unit)}, the high end of {what}");
            }
        }
    }
}
