using NodaTime;
using SwingStudy.Domain.Declarations.Yaml;

namespace SwingStudy.Domain.Declarations;

/// <summary>Time zones by their names in the IANA database.</summary>
public static class ZoneNames
{
    private const string Utc = "UTC";

    /// <summary>The zone of a name; null when it is not known. UTC has no rules, so the database, which takes its time to open, stays closed for it.</summary>
    public static DateTimeZone? Find(string name) => name == Utc ? DateTimeZone.Utc : DateTimeZoneProviders.Tzdb.GetZoneOrNull(name);

    /// <summary>Notes a problem when the zone is named and not known.</summary>
    internal static void Check(YamlMap map, string key, string? zone)
    {
        if (zone is { Length: > 0 } && Find(zone) is null)
            map.Note(DeclarationMessages.ZoneUnknown(map.PlaceOf(key), zone, DateTimeZoneProviders.Tzdb.Ids));
    }
}
