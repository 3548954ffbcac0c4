namespace SwingStudy.Pipeline.Screen.Rules;

/// <summary>Body weight on the plates of one session against the player's other sessions; told once a session, at its first swing.</summary>
internal sealed class WeightDriftRule : ScreeningCheck
{
    private const string Weight = "body_weight";

    public override string Name => "weight-drift";

    public override IEnumerable<RuleHit> Find(ScreenedSwings swings, RuleSetting rule)
    {
        if (swings.Variables.All(variable => variable.Name != Weight))
            yield break;
        var sessions = Enumerable.Range(0, swings.Count).Where(i => swings.Values(Weight)[i] > 0).GroupBy(i => swings.Sessions[i])
            .Select(group => (First: group.First(), Newtons: Middle.Median(group.Select(i => swings.Values(Weight)[i])))).ToList();
        foreach (var session in sessions.Where(_ => sessions.Count > 1))
        {
            var others = Middle.Median(sessions.Where(other => other != session).Select(other => other.Newtons));
            if (Math.Abs((session.Newtons / others) - 1) > rule.Limit("tolerance"))
            {
                yield return new RuleHit(session.First, Weight,
                    $"{FlagText.Value(session.Newtons, "N")} on the plates, {FlagText.Value(others, "N")} in the middle of the player's other sessions: look at plates, zero and footwear");
            }
        }
    }
}
