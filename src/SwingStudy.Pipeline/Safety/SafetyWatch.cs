using System.Text.Json;
using NodaTime;
using SwingStudy.Domain.Sources;
using SwingStudy.Domain.Studies;
using SwingStudy.Domain.Tables;
using SwingStudy.Pipeline.Running;
using SwingStudy.Storage.Registry;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Pipeline.Safety;

/// <summary>Holds what came in against the stop rules of the protocol, as soon as it came in: rows of devices, ratings and conditions of sessions.</summary>
/// <remarks>The program records and shows; people stop, and people decide to go on.</remarks>
public sealed class SafetyWatch
{
    private const string IntentVariable = "intent";
    private const string AtMaximum = "maximum";
    private readonly StudySetup _setup;
    private readonly StudyRegistry _registry;
    private readonly IReadOnlyList<WatchedPlayer> _players;

    /// <summary>Reads what the rules watch.</summary>
    public SafetyWatch(StudySetup setup, StudyRegistry registry, TableStore tables)
    {
        (_setup, _registry) = (setup, registry);
        var zone = DateTimeZoneProviders.Tzdb[setup.Declaration.Zone];
        var entries = registry.Entries().Where(entry => entry.Kind == SessionEntry.Ratings).ToLookup(entry => entry.Session, StringComparer.Ordinal);
        var players = registry.Sessions().GroupBy(session => session.Participant.ToString(), StringComparer.Ordinal).OrderBy(player => player.Key, StringComparer.Ordinal).ToList();
        var watched = new WatchedPlayer[players.Count];
        Parallel.For(0, watched.Length, i =>
        {
            var (player, swings) = (players[i].Key, Swings(tables, players[i].Key));
            watched[i] = new WatchedPlayer(player, [.. SessionTimes.Units(player, players[i], zone).Where(unit => unit.Session is not null).Select(unit => Watched(unit, swings, entries[unit.Session!.Id], zone))]);
        });
        _players = watched;
    }

    /// <summary>Stops that the rules call for and that are not on record, by session.</summary>
    public IReadOnlyList<SessionStop> News(Instant now)
    {
        var known = _registry.Stops().Select(stop => (stop.Session, stop.Evidence)).ToHashSet();
        return
        [
            .. from player in _players
               from session in player.Sessions
               from stop in StopChecks.Find(_setup.Protocol.StopRules, session, player.Sessions)
               where !known.Contains((session.Id, stop.Evidence))
               select new SessionStop(session.Id, new(player.Participant), stop.Evidence, stop.Rule, stop.Detail, now),
        ];
    }

    /// <summary>Swings of each player, those at maximum intent apart.</summary>
    public IReadOnlyList<SwingCounts> Counts() =>
        [.. _players.Select(player => new SwingCounts(player.Participant, player.Sessions.Count, player.Sessions.Sum(session => session.Count(null)), player.Sessions.Sum(session => session.Count(AtMaximum))))];

    private static WatchedSession Watched(WorkUnit unit, List<WatchedSwing> swings, IEnumerable<SessionEntry> entries, DateTimeZone zone)
    {
        var session = unit.Session!;
        var recorded = new Dictionary<string, List<WatchedValue>>(StringComparer.Ordinal);
        Add(session.StartedAt, session.Variables);
        foreach (var entry in entries.OrderBy(entry => entry.At).ThenBy(entry => entry.Id))
            Add(entry.At, entry.Document);
        using var variables = JsonDocument.Parse(session.Variables);
        return new WatchedSession(
            session.Id, session.StartedAt.InZone(zone).Date, [.. swings.Where(swing => unit.Owns(unit.Participant, swing.At.ToUnixTimeMilliseconds())).OrderBy(swing => swing.At)],
            recorded.ToDictionary(pair => pair.Key, pair => (IReadOnlyList<WatchedValue>)pair.Value, StringComparer.Ordinal),
            variables.RootElement.TryGetProperty(IntentVariable, out var intent) ? intent.GetString() : null);

        void Add(Instant at, string document)
        {
            using var values = JsonDocument.Parse(document);
            foreach (var value in values.RootElement.EnumerateObject())
            {
                if (NumberOf(value.Value) is { } number)
                    (recorded.TryGetValue(value.Name, out var list) ? list : recorded[value.Name] = []).Add(new WatchedValue(at, number));
            }
        }
    }

    private static double? NumberOf(JsonElement value) => value.ValueKind switch
    {
        JsonValueKind.Number => value.GetDouble(),
        JsonValueKind.True => 1,
        JsonValueKind.False => 0,
        _ => null,
    };

    private List<WatchedSwing> Swings(TableStore tables, string participant)
    {
        var swings = new List<WatchedSwing>();
        if (tables.Existing("captures") is not { } captures)
            return swings;
        var there = captures.Definition.Columns.Select(column => column.Name).ToHashSet(StringComparer.Ordinal);
        string[] watched = [.. _setup.Protocol.StopRules.Select(rule => rule.Variable).OfType<string>().Where(there.Contains).Distinct()];
        string[] columns = [.. new[] { "capture_id", "source", "recorded_at", "struck_at", "is_practice", "revision_of", "purpose", IntentVariable }.Where(there.Contains), .. watched];
        var sources = _setup.Mappings.Where(mapping => mapping.Rows == RowMeaning.Swings).Select(mapping => mapping.Source).ToHashSet(StringComparer.Ordinal);
        var rows = captures.Read(columns: [.. columns.Distinct()], partition: participant).ToList();
        var replaced = rows.SelectMany(set => set.Texts("revision_of")).OfType<string>().ToHashSet(StringComparer.Ordinal);
        foreach (var set in rows)
        {
            for (var row = 0; row < set.Count; row++)
            {
                var isSwing = sources.Contains(set.Texts("source")[row] ?? "") && !replaced.Contains(set.Texts("capture_id")[row]!)
                    && (!there.Contains("purpose") || set.Texts("purpose")[row] is null or "swing");
                if (isSwing && TimeOf(set, row) is { } at)
                    swings.Add(Swing(set, row, at, watched, there));
            }
        }

        return swings;
    }

    private static WatchedSwing Swing(RowSet set, int row, Instant at, string[] watched, HashSet<string> there) => new(
        set.Texts("source")[row]!, at, set.Booleans("is_practice")[row] == true, there.Contains(IntentVariable) ? set.Texts(IntentVariable)[row] : null,
        watched.Select(variable => (variable, value: ValueOf(set[variable], row))).Where(pair => pair.value is not null)
            .ToDictionary(pair => pair.variable, pair => pair.value!.Value, StringComparer.Ordinal));

    private static Instant? TimeOf(RowSet set, int row)
    {
        var millis = set["struck_at"].IsMissing(row) ? set.Instants("recorded_at")[row] : set.Instants("struck_at")[row];
        return millis == InstantColumn.MissingMillis ? null : Instant.FromUnixTimeMilliseconds(millis);
    }

    private static double? ValueOf(Column column, int row) => column.IsMissing(row) ? null : column switch
    {
        NumberColumn numbers => numbers.Values[row],
        IntegerColumn integers => integers.Values[row],
        BooleanColumn booleans => booleans.Values[row] == true ? 1 : 0,
        _ => null,
    };

    private sealed record WatchedPlayer(string Participant, List<WatchedSession> Sessions);
}
