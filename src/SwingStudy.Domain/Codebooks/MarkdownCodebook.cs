using System.Globalization;
using System.Text;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Units;
using SwingStudy.Domain.Variables;

namespace SwingStudy.Domain.Codebooks;

/// <summary>A dictionary as a document for people: one section a group, one paragraph a variable, everything that is declared.</summary>
public static class MarkdownCodebook
{
    /// <summary>The document in CommonMark, with line feeds.</summary>
    public static string Write(VariableDictionary dictionary)
    {
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"# Codebook: {dictionary.Name} {dictionary.Version}\n\n");
        text.Append(CultureInfo.InvariantCulture, $"{dictionary.Variables.Count} variables. Hash of the declarations: `{dictionary.Hash}`.\n\n");
        text.Append("A value outside its possible range is emptied and flagged, its raw text kept. A value outside its typical range is kept and flagged. ");
        text.Append("No range is a norm for a player.\n");
        foreach (var group in Groups(dictionary))
        {
            text.Append(CultureInfo.InvariantCulture, $"\n## {group.Title}\n\n{group.Description}\n");
            foreach (var variable in dictionary.Variables.Where(variable => variable.Group == group.Name))
                Append(text, variable);
        }

        if (dictionary.Notes.Count > 0)
            text.Append("\n## Versions\n");
        foreach (var note in dictionary.Notes)
        {
            text.Append(CultureInfo.InvariantCulture, $"\n### {note.Version}\n\n");
            foreach (var change in note.Changes)
                text.Append(CultureInfo.InvariantCulture, $"- {change}\n");
        }

        return text.ToString();
    }

    private static IEnumerable<VariableGroup> Groups(VariableDictionary dictionary) =>
        dictionary.Variables.Select(variable => variable.Group).Distinct().Select(name =>
            dictionary.Groups.FirstOrDefault(group => group.Name == name) ?? new VariableGroup(name, name, ""));

    private static void Append(StringBuilder text, Variable variable)
    {
        text.Append(CultureInfo.InvariantCulture, $"\n### {variable.Title}: `{variable.Name}`\n\n{variable.Description}\n\n");
        Item(text, "Type", $"{Word.Of(variable.Type)}, {Word.Of(variable.Scale)} scale, one value a {Word.Of(variable.Level)}");
        Item(text, "Unit", Unit(variable));
        Item(text, "Words", variable.Words.Count == 0 ? null : string.Join(", ", variable.Words));
        Item(text, "Sign", variable.Axis);
        Item(text, "Better", Direction(variable));
        Item(text, "Possible", Possible(variable));
        Item(text, "Typical", Typical(variable));
        Item(text, "Formula", variable.Formula);
        Item(text, "Definition", variable.Definition);
        Item(text, "Zero", variable.ZeroIsMissing ? "0 means that nothing was read" : null);
        Item(text, "Reference", variable.Reference);
        Item(text, "Headings", variable.Synonyms.Count == 0 ? null : string.Join(", ", variable.Synonyms));
    }

    private static void Item(StringBuilder text, string label, string? value)
    {
        if (value is not null)
            text.Append(CultureInfo.InvariantCulture, $"- {label}: {value}\n");
    }

    private static string? Unit(Variable variable)
    {
        if (variable.Unit is null)
            return null;
        return variable.DisplayUnit is null || variable.DisplayUnit == variable.Unit
            ? $"`{variable.Unit}`"
            : $"`{variable.Unit}`, shown in {UnitCatalogue.ParseCode(variable.DisplayUnit)?.Symbol ?? variable.DisplayUnit}";
    }

    private static string? Direction(Variable variable) => variable.Better switch
    {
        Better.None => null,
        Better.NearerTarget => string.Create(CultureInfo.InvariantCulture, $"nearer to {variable.Target}"),
        _ => Word.Of(variable.Better),
    };

    private static string? Possible(Variable variable)
    {
        var range = variable switch
        {
            { Minimum: null, Maximum: null } => null,
            { Maximum: null } => string.Create(CultureInfo.InvariantCulture, $"{variable.Minimum} and more"),
            { Minimum: null } => string.Create(CultureInfo.InvariantCulture, $"{variable.Maximum} and less"),
            _ => string.Create(CultureInfo.InvariantCulture, $"{variable.Minimum} to {variable.Maximum}"),
        };
        return range is null ? null : $"{range}{Symbol(variable)} ({variable.PossibleBasis})";
    }

    private static string? Typical(Variable variable)
    {
        if (variable.Typical is not { } range)
            return null;
        var text = string.Create(CultureInfo.InvariantCulture, $"{range.Low} to {range.High}{Symbol(variable)} ({range.Basis})");
        return range.Note is null ? text : $"{text}; {range.Note}";
    }

    private static string Symbol(Variable variable) =>
        variable.Unit is { } code && UnitCatalogue.ParseCode(code) is { Symbol.Length: > 0 } unit ? " " + unit.Symbol : "";
}
