using System.Text.RegularExpressions;
using SwingStudy.Domain.Declarations.Yaml;
using SwingStudy.Domain.Sources;

namespace SwingStudy.Domain.Declarations;

/// <summary>Reads where and how times are written.</summary>
internal static partial class TimeRuleReader
{
    /// <summary>Formats that name a moment by themselves.</summary>
    private static readonly string[] Epochs = ["unix-s", "unix-ms"];

    /// <summary>Formats with a name of their own.</summary>
    private static readonly string[] Named = [.. Epochs, "iso", "excel-serial"];

    public static TimeRule Read(YamlMap root, FieldReader fields)
    {
        if (root.Map("time", "'time'", "where and how the time of a row is written") is not { } map)
            return new() { Parts = [] };
        var parts = map.Maps("parts", "a part of 'time'", "column");
        if (parts.Count == 0)
            map.Note(DeclarationMessages.NeededWith(map.PlaceOf("parts"), "'time'", "parts", "at least one place"));
        var rule = new TimeRule
        {
            Parts = [.. parts.Select(part => fields.Text(part, hasWords: false))],
            Format = map.OptionalText("format"),
            Zone = map.OptionalText("zone"),
            DelaySeconds = map.OptionalNumber("delay_s") ?? 0,
        };
        map.Done();
        if (rule.Format is { } format && !Named.Contains(format) && !Letters().IsMatch(format))
            map.Note(DeclarationMessages.TimeFormatUnknown(map.PlaceOf("format"), format));
        ZoneNames.Check(map, "zone", rule.Zone);
        if (!map.Has("zone") && rule.Format != "iso" && !Epochs.Contains(rule.Format) && !CarriesOffset(rule.Format))
            map.Note(DeclarationMessages.ZoneMissing(map.PlaceOf("format"), rule.Format));
        return rule;
    }

    /// <summary>A pattern with the offset from UTC, outside quotes.</summary>
    private static bool CarriesOffset(string? format) => format is not null && !Named.Contains(format) && Quoted().Replace(format, "").Contains('z', StringComparison.Ordinal);

    [GeneratedRegex("'[^']*'", RegexOptions.CultureInvariant)]
    private static partial Regex Quoted();

    /// <summary>Pattern letters, signs between them and quoted texts; at least a day, else it is no moment.</summary>
    [GeneratedRegex(@"^(?=.*d)([yMdHhmsftzE \-./:,_TZ]|'[^']+')+$", RegexOptions.CultureInvariant)]
    private static partial Regex Letters();
}
