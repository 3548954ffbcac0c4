using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Protocols;

namespace SwingStudy.Pipeline.Screen;

/// <summary>A rule as the protocol sets it.</summary>
/// <param name="Rule">Name of the rule.</param>
/// <param name="Variables">Variables it looks at; empty: those it names by itself.</param>
/// <param name="Action">What it does: keep, exclude-value, exclude-swing.</param>
/// <param name="Limits">Its limits by name, defaults filled in, in the order of the rule's kind.</param>
internal sealed record RuleSetting(string Rule, IReadOnlyList<string> Variables, string Action, IReadOnlyList<KeyValuePair<string, double>> Limits)
{
    /// <summary>The limit of that name.</summary>
    public double Limit(string name) => Limits.First(limit => limit.Key == name).Value;

    public static RuleSetting Of(ScreeningRule rule)
    {
        var kind = ScreeningRuleKind.Find(rule.Rule) ?? throw new ArgumentException($"No screening rule is called '{rule.Rule}'.", nameof(rule));
        return new RuleSetting(
            rule.Rule, rule.Variables, Word.Of(rule.Action), [.. kind.Settings.Select(setting => KeyValuePair.Create(setting.Name, kind.Value(rule, setting.Name)))]);
    }
}
