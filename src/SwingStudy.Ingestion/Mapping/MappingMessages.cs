using System.Globalization;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Sources;
using SwingStudy.Domain.Variables;
using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Mapping;

/// <summary>All messages about a file that does not fit its mapping.</summary>
internal static class MappingMessages
{
    public static Problem ParticipantUnmapped(SourceMapping mapping) => new(
        "participant-unmapped", new Place(mapping.File), "the mapping does not say where the player's name stands",
        "a player for each row", $"Add 'participant:' with a column, the preamble, the file name or a constant to {mapping.File}.");

    public static Problem TimeFormatFault(SourceMapping mapping, string format, string fault) => new(
        "time-format-invalid", new Place(mapping.File), $"format '{format}': {fault}", "a pattern such as dd.MM.yyyy HH:mm:ss",
        $"Correct 'format' under 'time' in {mapping.File}.");

    public static Problem ColumnMissing(SourceMapping mapping, SheetShape shape, string column, string use, int? line) => new(
        "column-missing", new Place(shape.File, null, column), $"no column '{column}' (for {use}) among: {Headings(shape)}",
        "the headings that the mapping names",
        $"If the layout changed, add a mapping for it ('swingstudy source suggest'); else correct {At(mapping, line)}.");

    public static Problem FixedMissing(SourceMapping mapping, SheetShape shape, string place, string use, int line) => new(
        "text-missing", new Place(shape.File), $"nothing for {use} in the {place}", "a text there", $"Correct the pattern at {At(mapping, line)}, or mend the file.");

    public static Problem ColumnUnmapped(SourceMapping mapping, SheetShape shape, string column) => new(
        "column-unmapped", new Place(shape.File, null, column), "a column that is neither mapped nor ignored", "every column accounted for",
        $"Map it or list it under 'ignore' in {mapping.File}.");

    public static Problem UnitMismatch(SourceMapping mapping, SheetShape shape, Heading heading, Variable variable, string declared, int line) => new(
        "unit-mismatch", new Place(shape.File, null, heading.Name), $"the file says '{heading.Unit}', the mapping says '{declared}' for {variable.Name}",
        "one unit", $"Remove 'unit' at {At(mapping, line)} to follow the file, or correct it.");

    public static Problem UnitUnknown(SourceMapping mapping, SheetShape shape, Heading heading, int line) => new(
        "unit-unknown", new Place(shape.File, null, heading.Name), $"the units row says '{heading.Unit}'", "a unit that is known",
        $"Mend the file's units row, or declare 'layout: units_row: false' and 'unit:' at {At(mapping, line)}.");

    public static Problem UnitUnstated(SourceMapping mapping, SheetShape shape, string column, Variable variable, int line) => new(
        "unit-unstated", new Place(shape.File, null, column), $"neither the file nor the mapping names the unit of {variable.Name}",
        $"a unit that converts to {variable.Unit}", $"Add 'unit:' at {At(mapping, line)}.");

    public static Problem UnitOfOtherKind(SourceMapping mapping, SheetShape shape, string column, Variable variable, string mismatch, int line) => new(
        "unit-of-other-kind", new Place(shape.File, null, column), $"{mismatch} (for {variable.Name})", $"a unit that converts to {variable.Unit}",
        $"Map the column to another variable, or correct {At(mapping, line)}.");

    public static Problem UnitsVary(SheetShape shape, string reading, string first, string other, int line) => new(
        "units-vary", new Place(shape.File, line, reading), $"'{reading}' is in '{other}' here and in '{first}' before", "one unit for each reading of a file",
        "Export again with one unit, or split the file.");

    public static Problem BracketsNoUnit(SheetShape shape, Heading heading) => new(
        "brackets-no-unit", new Place(shape.File, null, heading.Name), $"'{heading.Unit}' in the heading is no known unit", "a unit or nothing",
        "Nothing to do when the brackets hold something else; else declare 'unit:' in the mapping.");

    public static Problem TimeAmbiguous(SourceMapping mapping, SheetShape shape, IEnumerable<string> formats) => new(
        "time-ambiguous", new Place(shape.File), $"the times fit more than one reading: {string.Join("; ", formats)}", "one format that fits all rows",
        $"Add 'format:' under 'time' in {mapping.File}.");

    public static Problem TimeUnknown(SourceMapping mapping, SheetShape shape, string? text) => new(
        "time-unknown", new Place(shape.File), text is null ? "no row has a time" : $"no known format fits all times up to '{text}'",
        "one format that fits all rows", $"Add 'format:' under 'time' in {mapping.File}; rows that do not fit it are then rejected.");

    public static Problem ZoneUnstated(SourceMapping mapping, SheetShape shape) => new(
        "zone-unstated", new Place(shape.File), "local times without a zone", "an IANA zone", $"Add 'zone:' under 'time' in {mapping.File}.");

    public static Problem TimeRepeated(SheetShape shape, int firstLine, int lastLine) => new(
        "time-repeated", new Place(shape.File, firstLine),
        string.Create(CultureInfo.InvariantCulture, $"local times of lines {firstLine} to {lastLine} occur twice, because clocks went back; nothing in the file tells which is meant"),
        "times that are told by their order, or an offset in the text",
        "Say which are meant with 'swingstudy decide file HASH --take --times earlier' (or later); or export again with UTC times or an offset.");

    public static Problem TimeRepeatedDecided(SheetShape shape, int firstLine, int? firstLater, string basis) => new(
        "time-repeated-decided", new Place(shape.File, firstLine), "local times that occur twice, because clocks went back",
        "evidence", firstLater is { } line ? string.Create(CultureInfo.InvariantCulture, $"Decided by {basis}: from line {line} on they are winter time.") : $"Decided by {basis}.");

    public static Problem MidnightCrossed(SheetShape shape, int line) => new(
        "midnight-crossed", new Place(shape.File, line), "the clock falls by more than half a day under one day's name", "times in order",
        "From this line on the rows are taken as the next day.");

    public static Problem ColumnUnreadable(SheetShape shape, string column, Variable variable, int cells, string sample) => new(
        "column-unreadable", new Place(shape.File, null, column),
        string.Create(CultureInfo.InvariantCulture, $"none of {cells} cells can be read as {variable.Name}, such as '{sample}'"),
        "cells in the notation that the mapping declares", "Check decimal sign, missing tokens and words of the mapping.");

    public static Problem ColumnImpossible(SheetShape shape, string column, Variable variable, int cells, string sample, string expected) => new(
        "column-impossible", new Place(shape.File, null, column),
        string.Create(CultureInfo.InvariantCulture, $"none of {cells} cells is a possible {variable.Name}, such as '{sample}'"), expected,
        "Check the unit: the file may be in another one than the mapping says; then the decimal sign.");

    public static Problem UnitJump(SheetShape shape, string column, Variable variable, double factor, string units, double median, double usual) => new(
        "unit-jump", new Place(shape.File, null, column),
        string.Create(CultureInfo.InvariantCulture, $"{variable.Name} is {median:G4} {variable.Unit} at the median where {usual:G4} is usual: a factor of about {factor:G4} ({units})"),
        "the unit that the mapping and the file name", "Check the unit; when the values are right, take the file with 'swingstudy decide file'.");

    public static Problem SequenceRestarted(SheetShape shape, int line, long before, long after) => new(
        "sequence-restarted", new Place(shape.File, line),
        string.Create(CultureInfo.InvariantCulture, $"the device's number goes from {before} to {after}"), "rising numbers",
        "Nothing to do: rows are told apart by time and number.");

    private static string At(SourceMapping mapping, int? line) =>
        line is { } at and > 0 ? string.Create(CultureInfo.InvariantCulture, $"{mapping.File}:{at}") : mapping.File;

    private static string Headings(SheetShape shape) => string.Join(", ", shape.Columns.Headings.Take(40).Select(heading => heading.Name));
}
