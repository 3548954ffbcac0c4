using SwingStudy.Domain.Declarations.Yaml;
using SwingStudy.Domain.Protocols;
using SwingStudy.Domain.Variables;

namespace SwingStudy.Domain.Declarations;

/// <summary>Reads the stop rules of a protocol.</summary>
internal static class StopRuleReader
{
    private const string IntentVariable = "intent";
    private const double AllOfIt = 100;
    private static readonly string[] Limits = ["at_least", "at_most", "rise", "fall_percent"];

    public static IReadOnlyList<StopRule> Read(YamlMap root, VariableDictionary dictionary) =>
        [.. root.Maps("stop_rules", "stop rule", "variable").Select(map => Rule(map, dictionary))];

    private static StopRule Rule(YamlMap map, VariableDictionary dictionary)
    {
        var rule = new StopRule(Variable(map, dictionary), map.OptionalNumber("at_least"), map.OptionalNumber("rise"), map.Text("why", "the reason, in a sentence"))
        {
            AtMost = map.OptionalNumber("at_most"),
            FallPercent = map.OptionalNumber("fall_percent"),
            OverSwings = map.OptionalCount("over_swings", 1) ?? new StopRule(null, null, null, "").OverSwings,
            MostSwings = map.OptionalCount("most_swings", 1),
            Per = map.OptionalChoice<SwingSpan>("per") ?? SwingSpan.Session,
            Intent = dictionary.TryGet(IntentVariable, out var intent) ? map.OptionalWordOf("intent", [.. intent.Words]) : map.OptionalText("intent"),
            Line = map.Line,
        };
        CheckTogether(map, rule);
        map.Done();
        return rule;
    }

    private static void CheckTogether(YamlMap map, StopRule rule)
    {
        if (!map.Has("variable") && !map.Has("most_swings"))
            map.Note(DeclarationMessages.NeededWith(map.PlaceOf("why"), map.Subject, "variable", "a variable that is watched, or most_swings"));
        if (map.Has("variable") && !Limits.Any(map.Has))
            map.Note(DeclarationMessages.NeededWith(map.PlaceOf("variable"), map.Subject, "at_least", "at least one of at_least, at_most, rise, fall_percent"));
        if (map.Has("variable") && map.Has("most_swings"))
            map.Note(DeclarationMessages.OnlyWith(map.PlaceOf("most_swings"), "most_swings", "in a stop rule of its own, without 'variable'"));
        if (rule.FallPercent is <= 0 or >= AllOfIt)
            map.Note(Messages.OutOfRange(map.PlaceOf("fall_percent"), "fall_percent", rule.FallPercent.Value, "a share above 0 and below 100"));
    }

    private static string? Variable(YamlMap map, VariableDictionary dictionary)
    {
        if (map.OptionalText("variable") is not { } name)
            return null;
        if (dictionary.TryGet(name, out var variable))
            return variable.Name;
        map.Note(DeclarationMessages.VariableUnknown(map.PlaceOf("variable"), name, dictionary));
        return null;
    }
}
