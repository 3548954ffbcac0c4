using System.Globalization;
using SwingStudy.Domain.Declarations.Yaml;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Units;
using SwingStudy.Domain.Variables;

namespace SwingStudy.Domain.Declarations;

/// <summary>Reads one variable of a dictionary file.</summary>
internal static class VariableReader
{
    /// <summary>Words that stand in the <c>type</c> key, as in a Frictionless Table Schema; a string with a closed list of words is a category.</summary>
    private static readonly Dictionary<string, VariableType> Types = new(StringComparer.Ordinal)
    {
        ["number"] = VariableType.Number,
        ["integer"] = VariableType.Integer,
        ["boolean"] = VariableType.Boolean,
        ["string"] = VariableType.Text,
    };

    public static Variable Read(YamlMap map, string group)
    {
        var constraints = map.OptionalMap("constraints", "'constraints' of " + map.Subject);
        var words = constraints?.Texts("enum") ?? [];
        var type = Types.GetValueOrDefault(map.WordOf("type", Types.Keys), VariableType.Text);
        if (type == VariableType.Text && words.Count > 0)
            type = VariableType.Category;
        var (better, target) = Direction(map);
        var variable = new Variable
        {
            Name = Names.Snake(map, "name", "ball_speed"),
            Title = map.Text("title", "what a person calls it"),
            Description = map.Text("description", "its meaning in one or two sentences"),
            Type = type,
            Group = group,
            Unit = Code(map, "unit"),
            DisplayUnit = Code(map, "display_unit"),
            Minimum = constraints?.OptionalNumber("minimum"),
            Maximum = constraints?.OptionalNumber("maximum"),
            PossibleBasis = constraints?.OptionalText("basis"),
            Words = words,
            Typical = Typical(map),
            Better = better,
            Target = target,
            Scale = map.OptionalChoice<MeasurementScale>("scale") ?? DefaultScale(type),
            Level = map.OptionalChoice<VariableLevel>("level") ?? VariableLevel.Swing,
            Axis = map.OptionalText("axis"),
            Formula = map.OptionalText("formula"),
            Definition = map.OptionalText("definition"),
            Reference = map.OptionalText("reference"),
            Synonyms = map.Texts("synonyms"),
            ZeroIsMissing = map.OptionalFlag("zero_is_missing") ?? false,
        };
        constraints?.Done();
        map.Done();
        Check(map, variable);
        return variable;
    }

    private static string? Code(YamlMap map, string key)
    {
        if (map.OptionalText(key) is not { } code)
            return null;
        if (UnitCatalogue.ParseCode(code) is not null)
            return code;
        map.Note(UnitCatalogue.Parse(code) is { } known
            ? DeclarationMessages.UnitNotCode(map.PlaceOf(key), code, known)
            : DeclarationMessages.UnitUnknown(map.PlaceOf(key), code));
        return null;
    }

    private static TypicalRange? Typical(YamlMap map)
    {
        if (map.OptionalMap("typical", "'typical' of " + map.Subject) is not { } range)
            return null;
        var typical = new TypicalRange(
            range.Number("low", "the lower end, canonical unit"),
            range.Number("high", "the upper end, canonical unit"),
            range.Text("basis", "a source, or 'flag only'"),
            range.OptionalText("note"));
        range.Done();
        if (typical.Low > typical.High)
            range.Note(new Problem(
                "range-order",
                range.PlaceOf("low"),
                $"'typical' of {map.Subject} has low above high",
                "low at most high",
                "Swap the two."));
        return typical;
    }

    private static (Better, double?) Direction(YamlMap map)
    {
        const string NearerTarget = "nearer-target";
        var target = map.OptionalNumber("target");
        var word = map.OptionalChoice<Better>("better") ?? Better.None;
        if (word == Better.NearerTarget && target is null && !map.Has("target"))
            map.Note(DeclarationMessages.NeededWith(map.PlaceOf("better"), map.Subject, "target", $"the value to come near to, because 'better' is {NearerTarget}"));
        if (word != Better.NearerTarget && target is not null)
            map.Note(DeclarationMessages.OnlyWith(map.PlaceOf("target"), "target", $"only with 'better: {NearerTarget}'"));
        return (word, target);
    }

    private static MeasurementScale DefaultScale(VariableType type) =>
        type is VariableType.Number or VariableType.Integer ? MeasurementScale.Ratio : MeasurementScale.Nominal;

    private static void Check(YamlMap map, Variable variable)
    {
        var isNumeric = variable.Type is VariableType.Number or VariableType.Integer;
        if (variable.Type == VariableType.Number && !map.Has("unit"))
            map.Note(DeclarationMessages.NeededWith(map.PlaceOf("name"), map.Subject, "unit", "the UCUM code of the canonical unit, or '1'"));
        if (!isNumeric)
        {
            foreach (var key in (string[])["unit", "display_unit", "typical"])
            {
                if (map.Has(key))
                    map.Note(DeclarationMessages.OnlyWith(map.PlaceOf(key), key, "only for numbers and integers"));
            }
        }

        if (variable is { Unit: { } code, DisplayUnit: { } shown }
            && UnitCatalogue.ParseCode(code) is { } unit
            && UnitCatalogue.ParseCode(shown)?.MismatchWith(unit) is { } mismatch)
        {
            map.Note(DeclarationMessages.UnitMismatch(map.PlaceOf("display_unit"), map.Subject, mismatch, unit));
        }

        CheckRange(map, variable, isNumeric);
    }

    private static void CheckRange(YamlMap map, Variable variable, bool isNumeric)
    {
        var place = map.PlaceOf("constraints");
        var hasRange = variable.Minimum is not null || variable.Maximum is not null;
        if (hasRange && !isNumeric)
            map.Note(DeclarationMessages.OnlyWith(place, "minimum", "only for numbers and integers"));
        if (hasRange && variable.PossibleBasis is null)
            map.Note(DeclarationMessages.NeededWith(place, "'constraints' of " + map.Subject, "basis", "physics, a source, or 'flag only'"));
        if (variable.Minimum > variable.Maximum)
            map.Note(new Problem(
                "range-order",
                place,
                $"'constraints' of {map.Subject} has minimum above maximum",
                "minimum at most maximum",
                "Swap the two."));
        if (variable.Typical is { } typical && (typical.Low < variable.Minimum || typical.High > variable.Maximum))
        {
            map.Note(new Problem(
                "range-order",
                map.PlaceOf("typical"),
                string.Create(CultureInfo.InvariantCulture, $"'typical' of {map.Subject} ({typical.Low} to {typical.High}) leaves the possible range"),
                string.Create(CultureInfo.InvariantCulture, $"values from {variable.Minimum} to {variable.Maximum}"),
                "Narrow 'typical' or widen 'constraints'."));
        }
    }
}
