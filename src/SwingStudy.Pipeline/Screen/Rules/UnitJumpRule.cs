namespace SwingStudy.Pipeline.Screen.Rules;

/// <summary>A session whose middle value differs from the player's other sessions with that club by the factor between two units of the variable.</summary>
/// <remarks>
/// Compared are the session's median and the median of the other sessions' medians. Factors follow from the variable's own unit (speeds: miles an
/// hour, kilometres an hour ...). With only one other session nobody can tell which of the two is in the wrong unit: both are flagged. A factor near
/// one, yards for metres, can also be a true change of nine percent: such flags ask for a look at the export.
/// </remarks>
internal sealed class UnitJumpRule : ScreeningCheck
{
    public override string Name => "unit-jump";

    public override IEnumerable<RuleHit> Find(ScreenedSwings swings, RuleSetting rule)
    {
        var (tolerance, least) = (rule.Limit("tolerance"), rule.Limit("minimum_swings"));
        foreach (var variable in swings.Chosen(rule))
        {
            var factors = variable.UnitFactors();
            var sessions = swings.BySessionAndClub(variable.Name).Where(group => group.Count >= least)
                .Select(group => (Swings: group, Club: swings.Clubs[group[0]], Median: Middle.Median(group.Select(i => swings.Values(variable.Name)[i])))).ToList();
            for (var s = 0; s < sessions.Count; s++)
            {
                double[] others = [.. sessions.Where((other, i) => i != s && other.Club == sessions[s].Club).Select(other => other.Median)];
                if (others.Length == 0 || Match(sessions[s].Median / Middle.Median(others), factors, tolerance) is not { } match)
                    continue;
                var detail = $"the session's median {FlagText.Value(sessions[s].Median, variable.Unit)} against {FlagText.Value(Middle.Median(others), variable.Unit)} in the player's other sessions: the factor between {variable.Unit} and {match}";
                foreach (var swing in sessions[s].Swings)
                    yield return new RuleHit(swing, variable.Name, detail);
            }
        }
    }

    private static string? Match(double ratio, IReadOnlyList<(string Code, double Factor)> factors, double tolerance)
    {
        foreach (var (code, factor) in factors)
        {
            if (Math.Abs((ratio / factor) - 1) <= tolerance || Math.Abs((ratio * factor) - 1) <= tolerance)
                return code;
        }

        return null;
    }
}
