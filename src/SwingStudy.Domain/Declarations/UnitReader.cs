using SwingStudy.Domain.Declarations.Yaml;
using SwingStudy.Domain.Units;
using SwingStudy.Domain.Variables;

namespace SwingStudy.Domain.Declarations;

/// <summary>Reads the unit in which a declaration gives values of a variable.</summary>
internal static class UnitReader
{
    /// <summary>The unit under the key <c>unit</c>; null when it is not there, or, with a problem, when it does not fit the variable.</summary>
    public static Unit? Read(YamlMap map, Variable variable) => Read(map, "unit", variable.Name, variable.Unit);

    /// <summary>The unit under <paramref name="key"/> for a quantity that is stored in the unit <paramref name="canonicalCode"/>; as above.</summary>
    public static Unit? Read(YamlMap map, string key, string name, string? canonicalCode)
    {
        if (map.OptionalText(key) is not { } text)
            return null;
        var place = map.PlaceOf(key);
        if (canonicalCode is null || UnitCatalogue.ParseCode(canonicalCode) is not { } canonical)
            map.Note(DeclarationMessages.UnitNotWanted(place, name));
        else if (UnitCatalogue.Parse(text) is not { } unit)
            map.Note(DeclarationMessages.UnitUnknown(place, text));
        else if (unit.MismatchWith(canonical) is { } mismatch)
            map.Note(DeclarationMessages.UnitMismatch(place, map.Subject, mismatch, canonical));
        else
            return unit;
        return null;
    }
}
