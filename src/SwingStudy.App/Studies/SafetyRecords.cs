using System.Globalization;
using System.Text.Json;
using NodaTime;
using Spectre.Console;
using SwingStudy.App.Terminal;
using SwingStudy.Domain.Problems;
using SwingStudy.Pipeline.Safety;
using SwingStudy.Reporting.Rows;
using SwingStudy.Storage.Registry;

namespace SwingStudy.App.Studies;

/// <summary>Stops and adverse events of a study: found, recorded, told.</summary>
internal static class SafetyRecords
{
    /// <summary>Variable of which a rating says that somebody asked.</summary>
    private const string AskedBy = "pain_nrs";

    /// <summary>Looks at what came in, records new stops, and gives all sessions that are stopped now.</summary>
    public static IReadOnlyList<SessionStop> Look(OpenedStudy study, CommandContext context)
    {
        if (study.Setup.Protocol.StopRules.Count == 0)
            return Open(study);
        var watch = new SafetyWatch(study.Setup, study.Registry, study.Tables);
        var news = watch.News(PeopleEntry.Now(context.Time));
        if (news.Count > 0)
        {
            study.Registry.Act(context.Actor, "session.stop", act =>
            {
                foreach (var stop in news)
                    act.Add(stop);
                return JsonSerializer.Serialize(new { stops = news.Select(stop => new { session = stop.Session, found = $"{stop.Session}: {stop.Detail}" }) });
            });
        }

        watch.Done();
        return Open(study);
    }

    /// <summary>Stops that nobody has lifted.</summary>
    public static IReadOnlyList<SessionStop> Open(OpenedStudy study) => [.. study.Registry.Stops().Where(stop => stop.ResumedAt is null)];

    /// <summary>A stop as a problem that a person has to settle.</summary>
    public static Problem AsProblem(SessionStop stop) => new("session-stopped", new Place(stop.Session), stop.Detail, stop.Rule,
        $"Stop, and look after the player; lasting or sharp pain belongs to a licensed practitioner. To go on later: 'swingstudy session resume {stop.Session} --reason TEXT'.");

    /// <summary>Stops as programs read them.</summary>
    public static IEnumerable<object> Documents(IEnumerable<SessionStop> stops) =>
        stops.Select(stop => new { stop.Session, participant = stop.Participant.ToString(), stop.Rule, stop.Detail, at = stop.At.ToString(), mend = AsProblem(stop).Mend });

    /// <summary>Writes stops for people.</summary>
    public static void Write(IAnsiConsole console, IReadOnlyList<SessionStop> stops)
    {
        if (stops.Count == 0)
            return;
        console.MarkupLine("[bold]Stopped by the protocol's rules:[/]");
        ProblemLines.Write(console, stops.Select(AsProblem));
    }

    /// <summary>What a report says of safety.</summary>
    public static SafetySummary Summary(OpenedStudy study)
    {
        var entries = study.Registry.Entries();
        return new SafetySummary
        {
            Incidents = [.. entries.Where(entry => entry.Kind == SessionEntry.Incident).Select(entry => new ReportedIncident(entry.Participant.ToString(), Sentence(study, entry, entries)))],
            Asked = [.. Asked(study, entries).Select(session => session.Participant.ToString())],
            Stops = [.. study.Registry.Stops().Select(stop => new ReportedIncident(stop.Participant.ToString(),
                $"{stop.Session}: {stop.Detail} ({stop.Rule.TrimEnd('.')}). {(stop.ResumedReason is { } reason ? $"Resumed: {reason}" : "Not resumed.")}"))],
            Counts = [.. new SafetyWatch(study.Setup, study.Registry, study.Tables).Counts().Select(count => new ReportedCount(count.Participant, count.Sessions, count.Swings, count.AtMaximum))],
        };
    }

    /// <summary>Sessions in which somebody asked: a rating of pain, a recorded "none", or an event.</summary>
    private static IEnumerable<SessionRecord> Asked(OpenedStudy study, IReadOnlyList<SessionEntry> entries)
    {
        var asked = entries.Where(entry => entry.Kind is SessionEntry.Asked or SessionEntry.Incident || Has(entry.Document)).Select(entry => entry.Session).ToHashSet(StringComparer.Ordinal);
        return study.Registry.Sessions().Where(session => asked.Contains(session.Id) || Has(session.Variables));

        static bool Has(string document)
        {
            using var values = JsonDocument.Parse(document);
            return values.RootElement.TryGetProperty(AskedBy, out _);
        }
    }

    private static string Sentence(OpenedStudy study, SessionEntry incident, IReadOnlyList<SessionEntry> entries)
    {
        var zone = DateTimeZoneProviders.Tzdb[study.Setup.Declaration.Zone];
        var text = string.Create(CultureInfo.InvariantCulture, $"{incident.Session}, {incident.At.InZone(zone):uuuu-MM-dd HH:mm}: {Fields(incident.Document)}");
        foreach (var later in entries.Where(entry => entry.Kind == SessionEntry.FollowUp && Of(entry.Document) == incident.Id))
            text += string.Create(CultureInfo.InvariantCulture, $" On {later.At.InZone(zone):uuuu-MM-dd}: {Fields(later.Document)}");
        return text;
    }

    private static long? Of(string document)
    {
        using var fields = JsonDocument.Parse(document);
        return fields.RootElement.TryGetProperty("incident", out var number) && number.ValueKind == JsonValueKind.Number ? number.GetInt64() : null;
    }

    private static string Fields(string document)
    {
        using var fields = JsonDocument.Parse(document);
        return string.Join("; ", fields.RootElement.EnumerateObject().Where(field => field.Value.ValueKind == JsonValueKind.String).Select(field =>
            field.Name == "what" ? field.Value.GetString() : $"{field.Name.Replace('_', ' ')} {field.Value.GetString()}")) + ".";
    }
}
