namespace SwingStudy.Pipeline.Screen.Rules;

/// <summary>The same value swing after swing within a session, as a frozen channel gives. Every value of the run is flagged.</summary>
internal sealed class RepeatedValueRule : ScreeningCheck
{
    public override string Name => "repeated-value";

    public override IEnumerable<RuleHit> Find(ScreenedSwings swings, RuleSetting rule)
    {
        foreach (var variable in swings.Chosen(rule))
        {
            foreach (var session in swings.BySessionAndClub(variable.Name).SelectMany(group => group).GroupBy(i => swings.Sessions[i]))
            {
                foreach (var run in Runs(swings, variable.Name, [.. session.Order()]).Where(run => run.Count >= rule.Limit("run")))
                {
                    var value = FlagText.Value(swings.Values(variable.Name)[run[0]], variable.Unit);
                    foreach (var swing in run)
                        yield return new RuleHit(swing, variable.Name, $"{value} in {run.Count} swings in a row");
                }
            }
        }
    }

    private static IEnumerable<List<int>> Runs(ScreenedSwings swings, string variable, List<int> ordered)
    {
        var run = new List<int>();
        foreach (var swing in ordered)
        {
            if (run.Count > 0 && swings.Values(variable)[run[0]] != swings.Values(variable)[swing])
            {
                yield return run;
                run = [];
            }

            run.Add(swing);
        }

        yield return run;
    }
}
