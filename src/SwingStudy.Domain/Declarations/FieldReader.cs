using SwingStudy.Domain.Declarations.Yaml;
using SwingStudy.Domain.Sources;
using SwingStudy.Domain.Variables;

namespace SwingStudy.Domain.Declarations;

/// <summary>Reads where a value stands and how its text becomes a value.</summary>
/// <param name="fileGroups">Named groups of the mapping's <c>files</c>.</param>
/// <param name="hasIndex">Whether the mapping has a table beside the files.</param>
internal sealed class FieldReader(IReadOnlyCollection<string> fileGroups, bool hasIndex)
{
    /// <summary>A field for a variable of the dictionary.</summary>
    public FieldSource Value(YamlMap map, Variable variable)
    {
        var hasUnitInCells = map.OptionalText("unit") == FieldSource.UnitInCells;
        var field = Place(map) with
        {
            Unit = hasUnitInCells ? null : UnitReader.Read(map, variable)?.Code,
            HasUnitInCells = hasUnitInCells,
            Signs = Signs(map),
            Mirror = map.OptionalFlag("mirror") ?? false,
            Scale = map.OptionalNumber("scale") ?? 1,
            Offset = map.OptionalNumber("offset") ?? 0,
            Negate = map.OptionalFlag("negate") ?? false,
            Decimal = DecimalSign(map),
            Missing = map.Texts("missing"),
            Words = map.Pairs("words"),
        };
        CheckWords(map, field, variable);
        if (hasUnitInCells && variable.Unit is null)
            map.Note(DeclarationMessages.UnitNotWanted(map.PlaceOf("unit"), variable.Name));
        if (hasUnitInCells && field.Column is null)
            map.Note(DeclarationMessages.OnlyWith(map.PlaceOf("unit"), FieldSource.UnitInCells, "only with 'column'"));
        if (variable.Type is not (VariableType.Number or VariableType.Integer))
        {
            foreach (var key in (string[])["scale", "offset", "negate", "decimal", "mirror", "signs"])
            {
                if (map.Has(key))
                    map.Note(DeclarationMessages.OnlyWith(map.PlaceOf(key), key, "only for numbers"));
            }
        }

        map.Done();
        return field;
    }

    /// <summary>A field that is a text: participant, part of a time, sequence, phase.</summary>
    public FieldSource Text(YamlMap map, bool hasWords)
    {
        var field = Place(map) with { Missing = map.Texts("missing") };
        if (hasWords)
            field = field with { Words = map.Pairs("words") };
        map.Done();
        return field;
    }

    /// <summary>A number that is stored in <paramref name="unit"/>: a channel, a time within a recording, a rate.</summary>
    public FieldSource Number(YamlMap map, string name, string? unit, bool hasUnit = true)
    {
        var field = Place(map) with
        {
            Unit = hasUnit ? UnitReader.Read(map, "unit", name, unit)?.Code : null,
            Scale = map.OptionalNumber("scale") ?? 1,
            Offset = map.OptionalNumber("offset") ?? 0,
            Negate = map.OptionalFlag("negate") ?? false,
            Decimal = DecimalSign(map),
            Missing = map.Texts("missing"),
        };
        map.Done();
        return field;
    }

    /// <summary>The decimal sign under the key <c>decimal</c>, or null.</summary>
    public static char? DecimalSign(YamlMap map) => map.OptionalWordOf("decimal", [".", ","])?[0];

    /// <summary>One character under a key, or null.</summary>
    public static char? Character(YamlMap map, string key)
    {
        if (map.OptionalText(key) is not { } text)
            return null;
        if (text.Length == 1)
            return text[0];
        map.Note(DeclarationMessages.OneCharacter(map.PlaceOf(key), key, text));
        return null;
    }

    /// <summary>Texts that give numbers their sign.</summary>
    private static Dictionary<string, bool> Signs(YamlMap map)
    {
        var signs = new Dictionary<string, bool>(StringComparer.OrdinalIgnoreCase);
        foreach (var (text, sign) in map.Pairs("signs"))
        {
            if (sign is not ("plus" or "minus"))
                map.Note(Messages.WordUnknown(map.PlaceOf("signs"), "signs", sign, ["plus", "minus"]));
            signs[text.Trim()] = sign == "minus";
        }

        return signs;
    }

    private FieldSource Place(YamlMap map)
    {
        var field = new FieldSource
        {
            Column = map.OptionalText("column"),
            Preamble = map.OptionalText("preamble"),
            FileGroup = map.OptionalText("file"),
            Index = map.OptionalText("index"),
            Constant = map.OptionalText("constant"),
            Line = map.Line,
        };
        var places = ((string[])["column", "preamble", "file", "index", "constant"]).Count(map.Has);
        if (places != 1)
            map.Note(DeclarationMessages.PlaceCount(map.PlaceOf("column"), map.Subject, places));
        if (field.Preamble is { } pattern)
            CheckPreamble(map, pattern);
        if (field.FileGroup is { } group && !fileGroups.Contains(group))
            map.Note(DeclarationMessages.FileGroupUnknown(map.PlaceOf("file"), group, fileGroups));
        if (field.Index is not null && !hasIndex)
            map.Note(DeclarationMessages.OnlyWith(map.PlaceOf("index"), "index", "only for recordings with 'index:', a table beside the files"));
        return field;
    }

    private static void CheckPreamble(YamlMap map, string pattern)
    {
        if (Patterns.Fault(pattern) is { } fault)
            map.Note(DeclarationMessages.PatternInvalid(map.PlaceOf("preamble"), "preamble", pattern, fault));
        else if (!Patterns.GroupNames(pattern).Contains("value"))
            map.Note(DeclarationMessages.PatternWithoutValue(map.PlaceOf("preamble"), pattern));
    }

    private static void CheckWords(YamlMap map, FieldSource field, Variable variable)
    {
        if (variable.Type != VariableType.Category)
            return;
        foreach (var word in field.Words.Values.Append(field.Constant).OfType<string>().Where(word => !variable.Words.Contains(word)))
            map.Note(DeclarationMessages.WordNotInCategory(map.PlaceOf(field.Constant == word ? "constant" : "words"), word, variable));
    }
}
