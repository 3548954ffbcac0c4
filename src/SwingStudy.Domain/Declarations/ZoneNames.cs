using NodaTime;
using SwingStudy.Domain.Declarations.Yaml;

namespace SwingStudy.Domain.Declarations;

/// <summary>Checks names of time zones against the IANA database.</summary>
internal static class ZoneNames
{
    /// <summary>Notes a problem when the zone is named and not known.</summary>
    public static void Check(YamlMap map, string key, string? zone)
    {
        if (zone is { Length: > 0 } && DateTimeZoneProviders.Tzdb.GetZoneOrNull(zone) is null)
            map.Note(DeclarationMessages.ZoneUnknown(map.PlaceOf(key), zone, DateTimeZoneProviders.Tzdb.Ids));
    }
}
