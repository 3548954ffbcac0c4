using SwingStudy.Domain.Declarations.Yaml;
using SwingStudy.Domain.Units;
using SwingStudy.Domain.Variables;

namespace SwingStudy.Domain.Declarations;

/// <summary>Reads the unit in which a declaration gives values of a variable.</summary>
internal static class UnitReader
{
    /// <summary>The unit under the key <c>unit</c>; null when it is not there, or, with a problem, when it does not fit the variable.</summary>
    public static Unit? Read(YamlMap map, Variable variable)
    {
        if (map.OptionalText("unit") is not { } text)
            return null;
        var place = map.PlaceOf("unit");
        if (variable.Unit is null || UnitCatalogue.ParseCode(variable.Unit) is not { } canonical)
            map.Note(DeclarationMessages.UnitNotWanted(place, variable.Name));
        else if (UnitCatalogue.Parse(text) is not { } unit)
            map.Note(DeclarationMessages.UnitUnknown(place, text));
        else if (unit.MismatchWith(canonical) is { } mismatch)
            map.Note(DeclarationMessages.UnitMismatch(place, map.Subject, mismatch, canonical));
        else
            return unit;
        return null;
    }
}
