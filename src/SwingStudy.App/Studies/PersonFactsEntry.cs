using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.People;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Variables;

namespace SwingStudy.App.Studies;

/// <summary>What people type of a player, as variables of the dictionary.</summary>
internal static class PersonFactsEntry
{
    /// <summary>Reads <c>variable=value</c> texts and the band of age.</summary>
    public static Outcome<PersonFacts> Read(VariableDictionary dictionary, ParticipantId participant, string? ageBand, IEnumerable<string> assignments)
    {
        var values = new Dictionary<string, string>(StringComparer.Ordinal);
        var problems = new List<Problem>();
        var given = assignments.Select(assignment => (Option: "--set", Assignment: assignment)).ToList();
        if (ageBand is not null)
            given.Add(("--age-band", $"{PersonFacts.AgeVariable}={ageBand}"));
        foreach (var (option, assignment) in given)
        {
            var parts = assignment.Split('=', 2);
            if (parts.Length != 2 || !dictionary.TryGet(parts[0], out var variable) || variable.Level != VariableLevel.Participant)
            {
                var known = dictionary.Variables.Where(candidate => candidate.Level == VariableLevel.Participant).Select(candidate => candidate.Name);
                problems.Add(new Problem("person-variable", new Place(option), $"'{assignment}'", $"variable=value with one of: {string.Join(", ", known)}",
                    "'swingstudy dictionary show NAME' tells the values of a variable."));
            }
            else if (variable.Words.Count > 0 && !variable.Words.Contains(parts[1]))
            {
                problems.Add(new Problem("person-value", new Place(option, Column: variable.Name), $"'{parts[1]}'", $"one of: {string.Join(", ", variable.Words)}", "Correct the value."));
            }
            else
            {
                values[variable.Name] = parts[1];
            }
        }

        return problems.Count > 0 ? Outcome<PersonFacts>.Failed(problems) : new PersonFacts(participant, values);
    }
}
