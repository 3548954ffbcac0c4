namespace SwingStudy.Pipeline.Screen.Rules;

/// <summary>Whether lead and trail plate may be exchanged: in most swings weight moves to the trail foot in the backswing. Told once a session.</summary>
/// <remarks>A reverse style exists at all levels of skill and is no fault, so this only asks a person to look; nothing is exchanged.</remarks>
internal sealed class PlatesSwappedRule : ScreeningCheck
{
    private const string Address = "lead_share_address";
    private const string Top = "lead_share_top";

    public override string Name => "plates-swapped";

    public override IEnumerable<RuleHit> Find(ScreenedSwings swings, RuleSetting rule)
    {
        if (!new[] { Address, Top }.All(name => swings.Variables.Any(variable => variable.Name == name)))
            yield break;
        var known = Enumerable.Range(0, swings.Count).Where(i => !double.IsNaN(swings.Values(Address)[i] + swings.Values(Top)[i]));
        foreach (var session in known.GroupBy(i => swings.Sessions[i]).Where(session => session.Count() >= rule.Limit("minimum_swings")))
        {
            var rising = session.Count(i => swings.Values(Top)[i] > swings.Values(Address)[i]);
            if (2 * rising > session.Count())
            {
                yield return new RuleHit(session.First(), Top,
                    $"the lead foot's share grows in {rising} of {session.Count()} backswings: the plates may be exchanged in the mapping, or this is a reverse style");
            }
        }
    }
}
