using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Variables;

namespace SwingStudy.Domain.Protocols;

/// <summary>Looks at a whole protocol: do its parts fit together, and can it answer its question?</summary>
public static class ProtocolCheck
{
    /// <summary>Contradictions and weaknesses, each with its line and mend.</summary>
    public static ProtocolReview Review(Protocol protocol, VariableDictionary dictionary) =>
        new([.. Contradictions(protocol, dictionary)], [.. ProtocolWeaknesses.Of(protocol)]);

    private static IEnumerable<Problem> Contradictions(Protocol protocol, VariableDictionary dictionary) =>
    [
        .. Names(protocol),
        .. Phases(protocol),
        .. Contrasts(protocol),
        .. Outcomes(protocol, dictionary),
        .. protocol.Outcomes.SelectMany(outcome => ContrastsUnknown(protocol, $"outcome '{outcome.Variable}'", outcome.Contrasts, outcome.Line)),
        .. protocol.Curves.SelectMany(curve => ContrastsUnknown(protocol, $"curve '{curve.Channel}'", curve.Contrasts, curve.Line)),
        .. RandomizationCheck.Of(protocol),
        .. Conditions(protocol, dictionary),
        .. Rules(protocol, dictionary),
        .. Ages(protocol),
    ];

    private static IEnumerable<Problem> Names(Protocol protocol) =>
    [
        .. Repeated(protocol, "phase", protocol.Phases.Select(phase => (phase.Name, phase.Line))),
        .. Repeated(protocol, "contrast", protocol.Contrasts.Select(contrast => (contrast.Name, contrast.Line))),
        .. Repeated(protocol, "outcome", protocol.Outcomes.Select(outcome => (outcome.Variable, outcome.Line))),
        .. Repeated(protocol, "curve", protocol.Curves.Select(curve => (curve.Channel, curve.Line))),
    ];

    private static IEnumerable<Problem> Repeated(Protocol protocol, string what, IEnumerable<(string Name, int Line)> names) => names
        .GroupBy(pair => pair.Name, StringComparer.Ordinal)
        .SelectMany(group => group.Skip(1).Select(pair => (pair, first: group.First().Line)))
        .Select(found => new Problem(
            "name-repeated",
            new(protocol.File, found.pair.Line),
            $"{what} '{found.pair.Name}' is declared twice",
            "distinct names",
            FormattableString.Invariant($"Rename or remove one of them; the first is in line {found.first}.")));

    private static IEnumerable<Problem> Phases(Protocol protocol)
    {
        var file = protocol.File;
        if (protocol.Phases.Count == 0)
        {
            yield return new("phases-missing", new(file), "the protocol has no phases", "at least one phase", "Add 'phases:'.");
            yield break;
        }

        var roles = protocol.Phases.Select(phase => phase.Role).ToList();
        var needed = Needed(protocol.Design);
        if (!needed.All(need => roles.Count(role => role == need.Role) >= need.Count))
        {
            yield return new(
                "design-phases",
                new(file, protocol.Phases[0].Line),
                $"a design of kind '{Word.Of(protocol.Design)}' has the phases {string.Join(", ", roles.Select(Word.Of))}",
                "at least " + string.Join(" and ", needed.Select(need => FormattableString.Invariant($"{need.Count} {Word.Of(need.Role)}"))),
                "Add the missing phases, or choose another design.");
        }
    }

    private static (PhaseRole Role, int Count)[] Needed(DesignKind design) => design switch
    {
        DesignKind.PrePost or DesignKind.MultipleBaseline or DesignKind.Alternating => [(PhaseRole.Baseline, 1), (PhaseRole.Intervention, 1)],
        DesignKind.Withdrawal => [(PhaseRole.Baseline, 2), (PhaseRole.Intervention, 1)],
        _ => [],
    };

    private static IEnumerable<Problem> Contrasts(Protocol protocol)
    {
        var names = protocol.Phases.Select(phase => phase.Name).ToList();
        if (protocol.Contrasts.Count == 0 && ComparesPhases(protocol))
        {
            yield return new(
                "contrasts-missing",
                new(protocol.File),
                "the protocol plans no comparison",
                "at least one contrast",
                "Add 'contrasts:' with '- { name: ..., from: ..., to: ... }'.");
        }

        foreach (var contrast in protocol.Contrasts)
        {
            var place = new Place(protocol.File, contrast.Line);
            foreach (var phase in new[] { contrast.From, contrast.To }.Where(phase => !names.Contains(phase)))
            {
                yield return new(
                    "phase-unknown",
                    place,
                    $"contrast '{contrast.Name}' names the phase '{phase}'",
                    "one of " + string.Join(", ", names),
                    Nearest.Of(phase, names) is { } near ? $"Did you mean '{near}'?" : "Name a phase of this protocol.");
            }

            if (contrast.From == contrast.To)
                yield return new(
                    "contrast-same",
                    place,
                    $"contrast '{contrast.Name}' compares '{contrast.From}' with itself",
                    "two phases",
                    "Change 'from' or 'to'.");
            else if (names.Contains(contrast.From) && names.IndexOf(contrast.To) is >= 0 and var to && to < names.IndexOf(contrast.From))
                yield return new(
                    "contrast-order",
                    place,
                    $"contrast '{contrast.Name}' goes back in time",
                    "'from' before 'to'",
                    "Swap 'from' and 'to'.");
        }
    }

    private static IEnumerable<Problem> Outcomes(Protocol protocol, VariableDictionary dictionary)
    {
        if (!protocol.Outcomes.Any(outcome => outcome.Role == OutcomeRole.Primary))
            yield return new(
                "primary-missing",
                new(protocol.File),
                "the protocol has no primary outcome",
                "at least one outcome that decides the question",
                "Give one outcome 'role: primary'.");
        foreach (var outcome in protocol.Outcomes)
        {
            var place = new Place(protocol.File, outcome.Line);
            var variable = dictionary[outcome.Variable];
            if (variable.Type is not (VariableType.Number or VariableType.Integer) || variable.Scale == MeasurementScale.Nominal)
                yield return new(
                    "outcome-not-numeric",
                    place,
                    $"outcome '{variable.Name}' is not a number",
                    "a number or count of the dictionary",
                    "Choose a numeric variable.");
            if (variable.Level == VariableLevel.Participant)
                yield return new(
                    "outcome-level",
                    place,
                    $"outcome '{variable.Name}' describes a participant",
                    "a variable of a swing or session",
                    "Choose a variable that can change.");
            if (outcome is { Role: OutcomeRole.Primary, SmallestWorthwhile: null } && ComparesPhases(protocol))
            {
                yield return new(
                    "worthwhile-missing",
                    place,
                    $"the primary outcome '{variable.Name}' has no 'smallest_worthwhile'",
                    "the smallest change that matters, with its basis and reason, said before data",
                    "Add 'smallest_worthwhile: { amount: ..., basis: stated, reason: ... }'.");
            }
        }
    }

    private static IEnumerable<Problem> ContrastsUnknown(Protocol protocol, string what, IReadOnlyList<string> named, int line) => named
        .Where(name => protocol.Contrasts.All(contrast => contrast.Name != name))
        .Select(name => new Problem(
            "contrast-unknown",
            new(protocol.File, line),
            $"{what} names the contrast '{name}'",
            "one of " + string.Join(", ", protocol.Contrasts.Select(contrast => contrast.Name)),
            "Name a contrast of this protocol."));

    private static IEnumerable<Problem> Conditions(Protocol protocol, VariableDictionary dictionary) => protocol.FixedConditions
        .Where(name => dictionary[name].Type is VariableType.Number)
        .Select(name => new Problem(
            "condition-not-category",
            new(protocol.File),
            $"the fixed condition '{name}' is a measured number, which never stays the same",
            "a category, a text, a count or a yes-no variable",
            "Fix what is chosen (club, ball, surface), not what is measured."));

    private static IEnumerable<Problem> Rules(Protocol protocol, VariableDictionary dictionary)
    {
        foreach (var rule in protocol.Screening)
        {
            var place = new Place(protocol.File, rule.Line);
            if (rule.Variables.Count == 0 && ScreeningRuleKind.Find(rule.Rule) is { NeedsVariables: true })
                yield return new(
                    "rule-variables",
                    place,
                    $"screening rule '{rule.Rule}' names no variables",
                    "the variables it looks at",
                    "Add 'variables: [...]'.");
            foreach (var name in rule.Variables.Where(name => dictionary[name].Type is not (VariableType.Number or VariableType.Integer)))
                yield return new(
                    "rule-variables",
                    place,
                    $"screening rule '{rule.Rule}' looks at '{name}', which is not a number",
                    "numeric variables",
                    "Remove it.");
        }

        foreach (var rule in protocol.StopRules.Where(rule => rule.Variable is { } watched && dictionary[watched].Type is VariableType.Category or VariableType.Text))
        {
            yield return new(
                "stop-rule-variable",
                new(protocol.File, rule.Line),
                $"the stop rule watches '{rule.Variable}', which is not a number",
                "a rating, a count or a yes-or-no",
                "Choose a numeric variable or a boolean one.");
        }
    }

    private static IEnumerable<Problem> Ages(Protocol protocol)
    {
        var eligibility = protocol.Eligibility;
        if (eligibility.MinorsAllowed || eligibility.MinimumAge >= eligibility.AgeOfMajority)
            yield break;
        yield return new(
            "minors-unclear",
            new(protocol.File),
            FormattableString.Invariant($"minors are not allowed, and 'minimum_age' is {eligibility.MinimumAge?.ToString(System.Globalization.CultureInfo.InvariantCulture) ?? "not given"}"),
            FormattableString.Invariant($"'minimum_age' of {eligibility.AgeOfMajority} or more, or 'minors_allowed: true' with guardian's consent and own assent"),
            "Correct one of them.");
    }

    /// <summary>Whether the design compares phases of a player, as opposed to measurements of the same thing.</summary>
    public static bool ComparesPhases(Protocol protocol) => protocol.Design is not (DesignKind.Reliability or DesignKind.Agreement);
}
