using System.Globalization;
using SwingStudy.Domain.Problems;

namespace SwingStudy.Domain.Declarations.Yaml;

/// <summary>The problems a declaration can have as a text: every message in one place, with its stable code.</summary>
internal static class Messages
{
    public static Problem FileMissing(string file) => new(
        "file-missing", new(file), "no such file", "a declaration in YAML", "Check the path, or create the file.");

    public static Problem FolderMissing(string folder) => new(
        "folder-missing", new(folder), "no such folder", "a folder with declarations in YAML", "Check the path, or create the folder.");

    public static Problem NotYaml(string file, int line, string parserMessage) => new(
        "yaml-syntax", new(file, line), parserMessage, "YAML", "Check indentation, colons and quotes around texts with special signs.");

    public static Problem NotUtf8(string file, int line) => new(
        "yaml-encoding", new(file, line), "bytes that are no UTF-8", "text in UTF-8", "Save the file as UTF-8.");

    public static Problem CharacterForbidden(string file, int line, char character) => new(
        "yaml-character",
        new(file, line),
        string.Create(CultureInfo.InvariantCulture, $"the invisible character U+{(int)character:X4}"),
        "text without control characters",
        "Delete the character; it often comes with pasted text.");

    public static Problem NotAGroup(string file) => new(
        "yaml-syntax", new(file, 1), "no keys", "one document of 'key: value' lines", "Write the declaration's keys at the left margin.");

    public static Problem KeyMissing(Place place, string subject, string key, string meaning) => new(
        "key-missing", place, $"{subject} has no '{key}'", meaning, $"Add '{key}:' there.");

    public static Problem KeyUnknown(Place place, string subject, string key, IReadOnlyCollection<string> known) => new(
        "key-unknown",
        place,
        $"{subject} has the unknown key '{key}'",
        "one of " + string.Join(", ", known),
        Nearest.Of(key, known) is { } near ? $"Did you mean '{near}'?"
        : key.Contains(' ', StringComparison.Ordinal) ? "If it is the rest of a text with a comma inside { }, put that text in quotes."
        : "Remove the key.");

    public static Problem WrongType(Place place, string key, string found, string expected, string mend) => new(
        "value-type", place, $"'{key}' is {found}", expected, mend);

    public static Problem WordUnknown(Place place, string key, string found, IReadOnlyCollection<string> known) => new(
        "value-word",
        place,
        $"'{key}' is '{found}'",
        "one of " + string.Join(", ", known),
        Nearest.Of(found, known) is { } near ? $"Did you mean '{near}'?" : "Use one of these words.");

    public static Problem OutOfRange(Place place, string key, double found, string expected) => new(
        "value-range", place, string.Create(CultureInfo.InvariantCulture, $"'{key}' is {found}"), expected, "Write a value in that range.");

    public static Problem Repeated(Place place, string what, string name, int firstLine) => new(
        "name-repeated",
        place,
        $"{what} '{name}' is declared twice",
        "distinct names",
        string.Create(CultureInfo.InvariantCulture, $"Rename or remove one of them; the first is in line {firstLine}."));

    public static Problem NotAName(Place place, string key, string found, string form, string example) => new(
        "name-form", place, $"'{key}' is '{found}'", form, $"Write it like '{example}'.");
}
