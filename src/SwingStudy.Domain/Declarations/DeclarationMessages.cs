using System.Globalization;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Units;
using SwingStudy.Domain.Variables;

namespace SwingStudy.Domain.Declarations;

/// <summary>The problems a declaration can have in what it means: every message in one place, with its stable code.</summary>
internal static class DeclarationMessages
{
    public static Problem VariableUnknown(Place place, string name, VariableDictionary dictionary) => new(
        "variable-unknown",
        place,
        $"'{name}' is no variable of the dictionary {dictionary.Name} {dictionary.Version}",
        "the name of a variable",
        Nearest.Of(name, dictionary.Variables.Select(variable => variable.Name)) is { } near
            ? $"Did you mean '{near}'?"
            : "See 'swingstudy dictionary show' for the names, or add the variable to the dictionary.");

    public static Problem ChannelUnknown(Place place, string name, IEnumerable<string> known) => new(
        "channel-unknown",
        place,
        $"'{name}' is no channel or landmark",
        "a name such as lead_force_y or club_head (left and right may stand for lead and trail)",
        Nearest.Of(name, known) is { } near ? $"Did you mean '{near}'?" : "See 'swingstudy source suggest' for the names, or leave the column out.");

    public static Problem UnitUnknown(Place place, string unit) => new(
        "unit-unknown",
        place,
        $"the unit '{unit}' is not known",
        "a UCUM code such as m/s, or a customary name such as mph",
        "Write the unit as a UCUM code.");

    public static Problem UnitNotCode(Place place, string unit, Unit known) => new(
        "unit-not-ucum", place, $"'{unit}' is a customary name of a unit", "a UCUM code", $"Write '{known.Code}'.");

    public static Problem UnitMismatch(Place place, string subject, string mismatch, Unit expected) => new(
        "unit-dimension",
        place,
        $"{subject}: {mismatch}",
        $"a unit of {expected.Dimension.Name}, such as {expected.Code}",
        "Correct the unit, or map the column to another variable.");

    public static Problem UnitNotWanted(Place place, string variable) => new(
        "unit-not-wanted",
        place,
        $"a unit is given for '{variable}', which has none",
        "no unit for texts and categories",
        "Remove 'unit'.");

    public static Problem PatternInvalid(Place place, string key, string pattern, string reason) => new(
        "pattern-invalid",
        place,
        $"'{key}' is the pattern '{pattern}': {reason}",
        "a regular expression",
        "Correct the pattern; a backslash needs single quotes around the text.");

    public static Problem PatternWithoutValue(Place place, string pattern) => new(
        "pattern-without-value",
        place,
        $"the pattern '{pattern}' has no group 'value'",
        "a named group (?<value>...)",
        "Put (?<value>...) around the part that is the value.");

    public static Problem FileGroupUnknown(Place place, string group, IReadOnlyCollection<string> groups) => new(
        "file-group-unknown",
        place,
        $"'files' has no group '{group}'",
        groups.Count == 0 ? "a named group in 'files'" : "one of " + string.Join(", ", groups),
        $"Name it in 'files': (?<{group}>...).");

    public static Problem PlaceCount(Place place, string subject, int count) => new(
        "field-place",
        place,
        string.Create(CultureInfo.InvariantCulture, $"{subject} names {count} places"),
        "exactly one of column, preamble, file, index, constant",
        count == 0 ? "Say where the value stands: { column: Heading }." : "Keep one of them.");

    public static Problem ZoneUnknown(Place place, string zone, IEnumerable<string> known) => new(
        "zone-unknown",
        place,
        $"'{zone}' is no time zone",
        "an IANA name such as Europe/Lisbon",
        Nearest.Of(zone, known) is { } near ? $"Did you mean '{near}'?" : "Use a name of the IANA time zone database.");

    public static Problem ZoneMissing(Place place, string? format) => new(
        "zone-missing",
        place,
        format is null ? "local times have no 'zone'" : $"times written as '{format}' have no 'zone'",
        "the IANA zone of the device's clock: a time without a zone is no moment",
        "Add 'zone: Europe/Lisbon' (or the device's zone) under 'time'.");

    public static Problem TimeFormatUnknown(Place place, string format) => new(
        "time-format",
        place,
        $"'{format}' is no time format",
        "a pattern of y M d E H h m s f t z such as 'dd.MM.yyyy HH:mm:ss', or iso, unix-s, unix-ms, excel-serial",
        "Write the pattern letter for letter as the file writes its times.");

    public static Problem EncodingUnknown(Place place, string encoding) => new(
        "encoding-unknown",
        place,
        $"'{encoding}' is no encoding",
        "an IANA name such as utf-8, windows-1252, utf-16",
        "Use one of these, or remove the key to have it detected.");

    public static Problem OneCharacter(Place place, string key, string found) => new(
        "value-character", place, $"'{key}' is '{found}'", "one character", "Write one character in quotes; a tab is \"\\t\".");

    public static Problem WordNotInCategory(Place place, string word, Variable variable) => new(
        "category-word",
        place,
        $"'{word}' is no word of '{variable.Name}'",
        "one of " + string.Join(", ", variable.Words),
        Nearest.Of(word, variable.Words) is { } near ? $"Did you mean '{near}'?" : "Use one of these words, or add the word to the dictionary.");

    public static Problem OnlyWith(Place place, string key, string when) => new(
        "key-misplaced", place, $"'{key}' is given", $"'{key}' {when}", $"Remove '{key}', or change what it depends on.");

    public static Problem NeededWith(Place place, string subject, string key, string why) => new(
        "key-missing", place, $"{subject} has no '{key}'", why, $"Add '{key}:' there.");

    public static Problem LevelNotParticipant(Place place, string variable) => new(
        "variable-level",
        place,
        $"'{variable}' describes a swing or session, not a participant",
        "a variable of the participant level",
        "Name one of them; 'swingstudy dictionary show' lists the levels.");

    public static Problem LevelParticipant(Place place, string variable) => new(
        "variable-level",
        place,
        $"'{variable}' describes a participant, not a swing or session",
        "a variable of a swing or session",
        "Record it with 'swingstudy people add'.");

    public static Problem GroupFileUnlisted(Place place, string name) => new(
        "group-unlisted",
        place,
        $"'{name}' is not listed under 'groups' of dictionary.yaml",
        "every file of the folder in the list, which gives the column order",
        $"Add '{name}' to 'groups', or move the file away.");
}
