using System.Globalization;
using System.Text.Json;
using NodaTime;
using NodaTime.Text;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Sources;
using SwingStudy.Domain.Studies;
using SwingStudy.Domain.Tables;
using SwingStudy.Pipeline.Running;
using SwingStudy.Storage.Registry;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Pipeline.Safety;

/// <summary>Holds what came in against the stop rules of the protocol, as soon as it came in: rows of devices, ratings and conditions of sessions.</summary>
/// <remarks>
/// The program records and shows; people stop, and people decide to go on. Players of whom nothing is new since the last look are not read again.
/// </remarks>
public sealed class SafetyWatch
{
    private const string IntentVariable = "intent";
    private const string AtMaximum = "maximum";

    /// <summary>Raised when the same data could be judged otherwise.</summary>
    private const int CodeVersion = 1;

    private readonly StudySetup _setup;
    private readonly StudyRegistry _registry;
    private readonly DeltaTable? _captures;
    private readonly DateTimeZone _zone;
    private readonly ILookup<string, SessionEntry> _ratings;
    private readonly IReadOnlyList<Player> _players;

    /// <summary>Finds the players; what rules watch of them is read when it is asked for.</summary>
    public SafetyWatch(StudySetup setup, StudyRegistry registry, TableStore tables)
    {
        (_setup, _registry, _captures) = (setup, registry, tables.Existing("captures"));
        _zone = DateTimeZoneProviders.Tzdb[setup.Declaration.Zone];
        _ratings = registry.Entries().Where(entry => entry.Kind == SessionEntry.Ratings).ToLookup(entry => entry.Session, StringComparer.Ordinal);
        var files = (_captures?.Files() ?? []).ToLookup(file => file.Partition ?? "", file => file.Path, StringComparer.Ordinal);
        _players =
        [
            .. registry.Sessions().GroupBy(session => session.Participant.ToString(), StringComparer.Ordinal).OrderBy(player => player.Key, StringComparer.Ordinal)
                .Select(player => new Player(player.Key, [.. player], InputHash(player, files[player.Key]))),
        ];
    }

    /// <summary>Stops that the rules call for and that are not on record, by session, of players of whom something is new since <see cref="Done"/>.</summary>
    public IReadOnlyList<SessionStop> News(Instant now)
    {
        var known = _registry.Stops().Select(stop => (stop.Session, stop.Evidence)).ToHashSet();
        return
        [
            .. from player in Read(NotLookedAt())
               from session in player.Sessions
               from stop in StopChecks.Find(_setup.Protocol.StopRules, session, player.Sessions)
               where !known.Contains((session.Id, stop.Evidence))
               select new SessionStop(session.Id, new(player.Code), stop.Evidence, stop.Rule, stop.Detail, now),
        ];
    }

    /// <summary>Notes that all players were looked at; to be called once the news are on record, so that none is lost.</summary>
    public void Done()
    {
        if (NotLookedAt().ToDictionary(player => player.Code, player => player.Input, StringComparer.Ordinal) is { Count: > 0 } looked)
            _registry.RecordWatched(looked);
    }

    /// <summary>Swings of each player, those at maximum intent apart.</summary>
    public IReadOnlyList<SwingCounts> Counts() =>
        [.. Read(_players).Select(player => new SwingCounts(player.Code, player.Sessions.Count, player.Sessions.Sum(session => session.Count(null)), player.Sessions.Sum(session => session.Count(AtMaximum))))];

    private IEnumerable<Player> NotLookedAt()
    {
        var seen = _registry.Watched();
        return _players.Where(player => seen.GetValueOrDefault(player.Code) != player.Input);
    }

    /// <summary>The hash of everything that rules see of a player.</summary>
    private Sha256 InputHash(IEnumerable<SessionRecord> sessions, IEnumerable<string> files) => Sha256.Of(string.Join('\n',
    [
        string.Create(CultureInfo.InvariantCulture, $"{CodeVersion} {_setup.Protocol.Hash} {_zone.Id}"),
        .. SwingSources().Order(StringComparer.Ordinal),
        .. from session in sessions
           from line in (string[])[$"{session.Id} {InstantPattern.ExtendedIso.Format(session.StartedAt)} {session.Variables}", .. _ratings[session.Id].Select(Line)]
           select line,
        .. files.Order(StringComparer.Ordinal),
    ]));

    private static string Line(SessionEntry entry) => string.Create(CultureInfo.InvariantCulture, $"{entry.Id} {InstantPattern.ExtendedIso.Format(entry.At)} {entry.Document}");

    private IEnumerable<string> SwingSources() => _setup.Mappings.Where(mapping => mapping.Rows == RowMeaning.Swings).Select(mapping => mapping.Source);

    /// <summary>What rules watch of some players, read player beside player.</summary>
    private WatchedPlayer[] Read(IEnumerable<Player> players)
    {
        Player[] asked = [.. players];
        var watched = new WatchedPlayer[asked.Length];
        Parallel.For(0, watched.Length, i =>
        {
            var (code, sessions, swings) = (asked[i].Code, asked[i].Sessions, Swings(asked[i].Code));
            watched[i] = new WatchedPlayer(code, [.. SessionTimes.Units(code, sessions, _zone).Where(unit => unit.Session is not null).Select(unit => Watched(unit, swings, _ratings[unit.Session!.Id], _zone))]);
        });
        return watched;
    }

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

    private List<WatchedSwing> Swings(string participant)
    {
        var swings = new List<WatchedSwing>();
        if (_captures is not { } captures)
            return swings;
        var there = captures.Definition.Columns.Select(column => column.Name).ToHashSet(StringComparer.Ordinal);
        string[] watched = [.. _setup.Protocol.StopRules.Select(rule => rule.Variable).OfType<string>().Where(there.Contains).Distinct()];
        string[] columns = [.. new[] { "capture_id", "source", "recorded_at", "struck_at", "is_practice", "revision_of", "purpose", IntentVariable }.Where(there.Contains), .. watched];
        var sources = SwingSources().ToHashSet(StringComparer.Ordinal);
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

    private sealed record Player(string Code, IReadOnlyList<SessionRecord> Sessions, Sha256 Input);

    private sealed record WatchedPlayer(string Code, List<WatchedSession> Sessions);
}
