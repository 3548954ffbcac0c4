using SwingStudy.Domain.Variables;

namespace SwingStudy.Ingestion.Suggest;

/// <summary>A variable with all words that headings use for it.</summary>
internal sealed class VariableNames(Variable variable)
{
    private readonly (string Text, string[] Words)[] _names =
        [.. variable.Synonyms.Prepend(variable.Title).Prepend(variable.Name).Select(text => (text, HeadingWords.Of(text)))];

    /// <summary>The variable.</summary>
    public Variable Variable { get; } = variable;

    /// <summary>How much a heading is like the nearest of its names, and that name.</summary>
    public (double Likeness, string Name) Likeness(string[] heading)
    {
        var best = (Likeness: 0.0, Name: "");
        foreach (var (text, words) in _names)
        {
            var likeness = HeadingWords.Likeness(heading, words);
            if (likeness > best.Likeness)
                best = (likeness, text);
        }

        return best;
    }
}
