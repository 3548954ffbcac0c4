using System.Buffers;
using System.Globalization;
using System.Text;
using System.Text.Json;
using NodaTime;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Variables;
using SwingStudy.Ingestion.Mapping;
using SwingStudy.Storage.Registry;

namespace SwingStudy.Ingestion.Intake;

/// <summary>Makes sessions of the rows of a coach's log.</summary>
/// <param name="registry">The sessions that the study has.</param>
/// <param name="zone">The study's zone.</param>
internal sealed class SessionRows(StudyRegistry registry, DateTimeZone zone)
{
    /// <summary>Compares the rows with the sessions of the registry.</summary>
    public Outcome<SessionChanges> Read(MappedFile file, IReadOnlyList<ParticipantId> people, Sha256 original, string name)
    {
        var changes = new SessionChanges();
        var problems = new List<Problem>();
        foreach (var player in Enumerable.Range(0, file.Count).GroupBy(row => people[file.AliasOf[row]]).OrderBy(group => group.Key.ToString(), StringComparer.Ordinal))
        {
            var known = registry.Sessions(player.Key);
            foreach (var day in player.GroupBy(row => DayOf(file, row)).OrderBy(group => group.Key))
                ReadDay(file, player.Key, day.Key, day, known, original, name, changes, problems);
        }

        return problems.Count > 0 ? Outcome<SessionChanges>.Failed(problems) : changes;
    }

    private LocalDate DayOf(MappedFile file, int row) => Instant.FromUnixTimeMilliseconds(file.RecordedAt[row]).InZone(zone).Date;

    /// <summary>
    /// Sessions of one player and day. The same start is the same session; what is left over is matched in the order of starts, so that a corrected
    /// start keeps its identifier; what is still left is new.
    /// </summary>
    private void ReadDay(
        MappedFile file,
        ParticipantId player,
        LocalDate day,
        IEnumerable<int> rows,
        IReadOnlyList<SessionRecord> known,
        Sha256 original,
        string name,
        SessionChanges changes,
        List<Problem> problems)
    {
        var read = new List<SessionRecord>();
        foreach (var row in rows.OrderBy(row => file.RecordedAt[row]).ThenBy(row => row))
        {
            var session = Build(file, row, player, original);
            if (read.Find(other => other.StartedAt == session.StartedAt) is not { } twin)
                read.Add(session);
            else if (Same(twin, session))
                changes.Repeats++;
            else
                problems.Add(IntakeMessages.SessionTwice(name, session.OriginalRow!.Value, twin.OriginalRow!.Value));
        }

        var onDay = known.Where(session => session.StartedLocal.Date == day || session.Id.StartsWith($"{player}-{Compact(day)}-", StringComparison.Ordinal)).ToList();
        var matched = read.ToDictionary(session => session, session => onDay.Find(other => other.StartedAt == session.StartedAt));
        var free = new Queue<SessionRecord>(onDay.Where(session => !matched.ContainsValue(session) && session.Original is not null).OrderBy(session => session.StartedAt));
        var ordinal = onDay.Count == 0 ? 0 : onDay.Max(session => int.Parse(session.Id.AsSpan(session.Id.LastIndexOf('-') + 1), CultureInfo.InvariantCulture));
        foreach (var session in read)
        {
            var earlier = matched[session] ?? (free.Count > 0 ? free.Dequeue() : null);
            var id = earlier?.Id ?? new SessionId(player, day.ToDateOnly(), ++ordinal).ToString();
            if (earlier is not null && Same(earlier, session with { Id = id }))
            {
                changes.Repeats++;
                continue;
            }

            changes.Sessions.Add(session with { Id = id });
            if (earlier is not null)
                changes.Revisions.AddRange(Differences(earlier, session));
        }
    }

    private static string Compact(LocalDate day) => day.ToDateOnly().ToString("yyyyMMdd", CultureInfo.InvariantCulture);

    private SessionRecord Build(MappedFile file, int row, ParticipantId player, Sha256 original)
    {
        var start = Instant.FromUnixTimeMilliseconds(file.RecordedAt[row] - (long)Math.Round(file.Plan.Mapping.Time.DelaySeconds * 1000));
        var texts = file.Plan.Texts.Select((column, i) => (column.Variable.Name, Value: file.Text(i, row))).ToDictionary(pair => pair.Name, pair => pair.Value, StringComparer.Ordinal);
        var planned = file.Plan.Numbers.Select((column, i) => (column.Variable.Name, Value: file.Number(i, row))).FirstOrDefault(pair => pair.Name == "planned_swings", (Name: "", Value: double.NaN)).Value;
        return new SessionRecord
        {
            Id = "",
            Participant = player,
            StartedAt = start,
            StartedLocal = start.InZone(zone).LocalDateTime,
            Phase = file.Phase(row),
            Site = texts.GetValueOrDefault("site"),
            Club = texts.GetValueOrDefault("club"),
            Ball = texts.GetValueOrDefault("ball"),
            Surface = texts.GetValueOrDefault("surface"),
            Cue = texts.GetValueOrDefault("cue"),
            PlannedSwings = double.IsNaN(planned) ? null : (int)planned,
            Variables = Others(file, row),
            Note = texts.GetValueOrDefault("note"),
            Original = original,
            OriginalRow = file.Lines[row],
        };
    }

    /// <summary>All variables without a column of their own in the registry, by name, in canonical units.</summary>
    private static string Others(MappedFile file, int row)
    {
        string[] own = ["site", "club", "ball", "surface", "cue", "note", "planned_swings"];
        var buffer = new ArrayBufferWriter<byte>();
        using (var writer = new Utf8JsonWriter(buffer))
        {
            writer.WriteStartObject();
            for (var i = 0; i < file.Plan.Numbers.Count; i++)
            {
                var (variable, value) = (file.Plan.Numbers[i].Variable, file.Number(i, row));
                if (double.IsNaN(value) || own.Contains(variable.Name))
                    continue;
                if (variable.Type == VariableType.Boolean)
                    writer.WriteBoolean(variable.Name, value == 1);
                else
                    writer.WriteNumber(variable.Name, value);
            }

            for (var i = 0; i < file.Plan.Texts.Count; i++)
            {
                if (file.Text(i, row) is { } text && !own.Contains(file.Plan.Texts[i].Variable.Name))
                    writer.WriteString(file.Plan.Texts[i].Variable.Name, text);
            }

            writer.WriteEndObject();
        }

        return CanonicalJson.Of(Encoding.UTF8.GetString(buffer.WrittenSpan));
    }

    private static bool Same(SessionRecord a, SessionRecord b) => !Differences(a, b).Any() && a.Participant == b.Participant;

    private static IEnumerable<RowRevision> Differences(SessionRecord before, SessionRecord after)
    {
        (string Name, string? Before, string? After)[] fields =
        [
            ("started_at", before.StartedAt.ToString(), after.StartedAt.ToString()), ("phase", before.Phase, after.Phase), ("site", before.Site, after.Site),
            ("club", before.Club, after.Club), ("ball", before.Ball, after.Ball), ("surface", before.Surface, after.Surface), ("cue", before.Cue, after.Cue),
            ("planned_swings", before.PlannedSwings?.ToString(CultureInfo.InvariantCulture), after.PlannedSwings?.ToString(CultureInfo.InvariantCulture)),
            ("variables", CanonicalJson.Of(before.Variables), CanonicalJson.Of(after.Variables)), ("note", before.Note, after.Note),
        ];
        return fields.Where(field => field.Before != field.After).Select(field => new RowRevision(after.OriginalRow ?? 0, before.Id, field.Name, field.Before, field.After));
    }
}
