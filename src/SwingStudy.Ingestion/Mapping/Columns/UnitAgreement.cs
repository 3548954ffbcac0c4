using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Sources;
using SwingStudy.Domain.Units;
using SwingStudy.Domain.Variables;
using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Mapping.Columns;

/// <summary>What the mapping and the file each say of a column's unit. Both may be silent, but never contradict each other.</summary>
/// <param name="mapping">The mapping.</param>
/// <param name="shape">The file.</param>
/// <param name="variable">The variable.</param>
/// <param name="field">Its place in the mapping.</param>
/// <param name="heading">Its heading in the file; null for a text that holds for all rows.</param>
/// <param name="unitInMappedHeading">Unit in brackets of the heading as the mapping writes it.</param>
internal sealed class UnitAgreement(
    SourceMapping mapping,
    SheetShape shape,
    Variable variable,
    FieldSource field,
    Heading? heading,
    string? unitInMappedHeading)
{
    private const double SameFactor = 1e-9;

    /// <summary>The unit of the numbers, once <see cref="Conversion"/> has found it; null where none is told.</summary>
    public Unit? Unit { get; private set; }

    /// <summary>The conversion to the canonical unit; null when a problem was added.</summary>
    public UnitConversion? Conversion(List<Problem> problems, List<Problem> remarks)
    {
        if (variable.Unit is not { } code)
            return UnitConversion.None;
        var canonical = UnitCatalogue.ParseCode(code)
            ?? throw new InvalidOperationException($"The dictionary's unit '{code}' of {variable.Name} was not checked.");
        var declared = field.Unit is { } text ? Parse(text) : null;
        var found = Found(problems, remarks, out var failed);
        if (failed)
            return null;
        declared ??= unitInMappedHeading is { } mapped ? Parse(mapped) : null;
        if (declared is not null && found is not null && !AreSame(declared, found))
        {
            problems.Add(MappingMessages.UnitMismatch(mapping, shape, heading!, variable, field.Unit ?? unitInMappedHeading!, field.Line));
            return null;
        }

        var unit = declared ?? found;
        if (field.HasUnitInCells && unit is null)
            return UnitConversion.None;
        Unit = unit;
        if (unit is null)
        {
            if (code == "1")
                return UnitConversion.None;
            problems.Add(MappingMessages.UnitUnstated(mapping, shape, heading?.Name ?? "constant", variable, field.Line));
            return null;
        }

        if (UnitConversion.Between(unit, canonical) is { } conversion)
            return conversion;
        problems.Add(MappingMessages.UnitOfOtherKind(mapping, shape, heading?.Name ?? "constant", variable, unit.MismatchWith(canonical) ?? "", field.Line));
        return null;
    }

    private static Unit? Parse(string text) => text is "-" or "–" or "" ? UnitCatalogue.ParseCode("1") : UnitCatalogue.Parse(text);

    private static bool AreSame(Unit a, Unit b) =>
        UnitConversion.Between(a, b) is { } between && Math.Abs(between.Factor - 1) < SameFactor && Math.Abs(between.Offset) < SameFactor;

    private Unit? Found(List<Problem> problems, List<Problem> remarks, out bool failed)
    {
        failed = false;
        if (heading?.Unit is not { } text)
            return null;
        if (Parse(text) is { } unit)
            return unit;

        // Brackets at the end of a heading hold other things as well: "Angle (lead)". A row of units holds units.
        if (HeadingText.SplitUnit(heading.Text).Unit == text)
        {
            remarks.Add(MappingMessages.BracketsNoUnit(shape, heading));
            return null;
        }

        problems.Add(MappingMessages.UnitUnknown(mapping, shape, heading, field.Line));
        failed = true;
        return null;
    }
}
