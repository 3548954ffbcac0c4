using System.Globalization;
using System.Text.Json.Nodes;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Variables;
using SwingStudy.Storage.Registry;

namespace SwingStudy.App.Studies;

/// <summary>Conditions and ratings as people type them: <c>pain_nrs=2</c>, in the canonical units of the dictionary.</summary>
internal static class SessionVariables
{
    /// <summary>Variables with a column of their own in a session; they have options of their own.</summary>
    private static readonly string[] Own = ["site", "club", "ball", "surface", "cue", "note", "planned_swings"];

    /// <summary>Reads assignments, or tells all their problems.</summary>
    /// <returns>A canonical JSON object by variable.</returns>
    public static Outcome<string> Read(VariableDictionary dictionary, IEnumerable<string> assignments)
    {
        var values = new JsonObject();
        var problems = new List<Problem>();
        foreach (var assignment in assignments)
        {
            var parts = assignment.Split('=', 2);
            if (parts.Length != 2 || !dictionary.TryGet(parts[0], out var variable) || variable.Level == VariableLevel.Participant || Own.Contains(parts[0]))
            {
                problems.Add(new Problem("session-variable", new Place("--set"), $"'{assignment}'", "variable=value with a variable of a session or swing",
                    "'swingstudy dictionary show' lists the variables; club, ball, cue and the like have options of their own."));
            }
            else if (Value(variable, parts[1]) is { } value)
            {
                values[variable.Name] = value;
            }
            else
            {
                problems.Add(new Problem("session-value", new Place("--set", Column: variable.Name), $"'{parts[1]}'", Expected(variable), "Correct the value; numbers have a decimal point and the dictionary's unit."));
            }
        }

        return problems.Count > 0 ? Outcome<string>.Failed(problems) : CanonicalJson.Of(values.ToJsonString());
    }

    /// <summary>The values of <paramref name="earlier"/>, with those of <paramref name="later"/> in their place.</summary>
    public static string Merge(string earlier, string later)
    {
        var merged = JsonNode.Parse(earlier)!.AsObject();
        foreach (var (name, value) in JsonNode.Parse(later)!.AsObject())
            merged[name] = value?.DeepClone();
        return CanonicalJson.Of(merged.ToJsonString());
    }

    private static JsonValue? Value(Variable variable, string text) => variable.Type switch
    {
        VariableType.Number or VariableType.Integer => double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number)
            && number >= (variable.Minimum ?? double.NegativeInfinity) && number <= (variable.Maximum ?? double.PositiveInfinity)
            && (variable.Type == VariableType.Number || number == Math.Floor(number)) ? JsonValue.Create(number) : null,
        VariableType.Boolean => text switch
        {
            "yes" or "true" => JsonValue.Create(true),
            "no" or "false" => JsonValue.Create(false),
            _ => null,
        },
        VariableType.Category => variable.Words.Contains(text) ? JsonValue.Create(text) : null,
        _ => JsonValue.Create(text),
    };

    private static string Expected(Variable variable) => variable.Type switch
    {
        VariableType.Boolean => "yes or no",
        VariableType.Category => $"one of: {string.Join(", ", variable.Words)}",
        _ => string.Create(CultureInfo.InvariantCulture, $"a number from {variable.Minimum?.ToString(CultureInfo.InvariantCulture) ?? "any"} to {variable.Maximum?.ToString(CultureInfo.InvariantCulture) ?? "any"}{(variable.Unit is null or "1" ? "" : " " + variable.Unit)}"),
    };
}
