using System.Text.RegularExpressions;
using SwingStudy.Domain.Declarations;
using SwingStudy.Domain.Sources;
using SwingStudy.Ingestion.Readers;
using SwingStudy.Ingestion.Recordings;

namespace SwingStudy.Ingestion.Mapping;

/// <summary>Texts that hold for a whole file: constants, parts of its name, its preamble, its row in the table beside it.</summary>
/// <param name="preamble">Lines above the headings.</param>
/// <param name="nameMatch">Match of the mapping's pattern on the file's name.</param>
/// <param name="index">Row of the table beside the file.</param>
internal sealed class FixedTexts(IReadOnlyList<PreambleLine> preamble, Match? nameMatch, IndexRow? index = null)
{
    private readonly Dictionary<FieldSource, string?> _found = new(ReferenceEqualityComparer.Instance);

    /// <summary>The text; null when nothing stands in that place, or when it is a column.</summary>
    public string? Of(FieldSource field)
    {
        if (!_found.TryGetValue(field, out var text))
            _found[field] = text = Find(field);
        return text;
    }

    /// <summary>What a place is called in messages.</summary>
    public static string PlaceName(FieldSource field) => field switch
    {
        { Column: { } column } => column,
        { FileGroup: { } group } => $"file name, group {group}",
        { Index: { } heading } => $"table beside the file, column {heading}",
        { Preamble: not null } => "preamble",
        _ => "constant",
    };

    private string? Find(FieldSource field)
    {
        if (field.Constant is not null)
            return field.Constant;
        if (field.FileGroup is { } group)
            return nameMatch?.Groups[group] is { Success: true } found ? found.Value : null;
        if (field.Index is { } heading)
            return index?.Find(heading);
        if (field.Preamble is not { } pattern)
            return null;
        var regex = Patterns.Compile(pattern);
        return preamble.Select(line => regex.Match(line.Text)).FirstOrDefault(match => match.Success && match.Groups["value"].Success)?.Groups["value"].Value.Trim();
    }
}
