using System.Collections.Concurrent;
using NodaTime;
using SwingStudy.Domain.Tables;

namespace SwingStudy.Pipeline.Analyse.Findings;

/// <summary>All swings of one player, counted or not, and what rival explanations ask of them.</summary>
internal sealed class PlayerRows
{
    private readonly RowSet _swings;
    private readonly LocalDate?[] _days;
    private readonly SwingDevices _devices;
    private readonly ILookup<string, SessionClock> _clocks;
    private readonly Dictionary<string, int> _rowOf;
    private readonly ConcurrentDictionary<(string Condition, string Phase), SortedDictionary<string, double>> _words = new();

    /// <param name="participant">The player.</param>
    /// <param name="swings">The player's rows of <c>swings</c>.</param>
    /// <param name="devices">Devices of all swings.</param>
    /// <param name="clocks">Clocks of devices, by session.</param>
    /// <param name="zone">Zone in which days are told.</param>
    public PlayerRows(string participant, RowSet swings, SwingDevices devices, ILookup<string, SessionClock> clocks, DateTimeZone zone)
    {
        (Participant, _swings, _devices, _clocks) = (participant, swings, devices, clocks);
        _days = [.. swings.Instants("struck_at").Select(millis => millis == InstantColumn.MissingMillis ? (LocalDate?)null : Instant.FromUnixTimeMilliseconds(millis).InZone(zone).Date)];
        _rowOf = swings.Texts("swing_id").Index().ToDictionary(pair => pair.Item!, pair => pair.Index, StringComparer.Ordinal);
    }

    /// <summary>The player.</summary>
    public string Participant { get; }

    /// <summary>Swings at a ball of a phase, counted or not.</summary>
    public int Struck(string phase)
    {
        var (phases, practice) = (_swings.Texts("phase"), _swings.Booleans("is_practice"));
        return Enumerable.Range(0, _swings.Count).Count(i => phases[i] == phase && practice[i] != true);
    }

    /// <summary>Words of a condition over the included swings of a phase, with the share of swings of each; empty when nobody wrote it down.</summary>
    public IReadOnlyDictionary<string, double> Words(string condition, string phase) => _words.GetOrAdd((condition, phase), CountedWords);

    /// <summary>Devices that gave counted values, with the share of values of each; empty when no link says.</summary>
    public IReadOnlyDictionary<string, double> Devices(IEnumerable<CountedValue> values, string outcome) =>
        Shares(values.Select(value => _devices.Of(value.Swing, outcome)).OfType<string>());

    /// <summary>Days on which the values were struck.</summary>
    public IReadOnlySet<LocalDate> Days(IEnumerable<CountedValue> values) =>
        values.Select(value => _days[_rowOf[value.Swing]]).OfType<LocalDate>().ToHashSet();

    /// <summary>Mean of a numeric column over the included swings of a phase; null without values.</summary>
    public double? Mean(string column, string phase)
    {
        var (phases, included, values) = (_swings.Texts("phase"), _swings.Booleans("included"), _swings.Numbers(column));
        double[] known = [.. Enumerable.Range(0, _swings.Count).Where(i => phases[i] == phase && included[i] == true && !double.IsNaN(values[i])).Select(i => values[i])];
        return known.Length == 0 ? null : known.Average();
    }

    /// <summary>How devices' clocks ran in the sessions of a phase.</summary>
    public IEnumerable<SessionClock> Clocks(string phase)
    {
        var (phases, sessions) = (_swings.Texts("phase"), _swings.Texts("session"));
        return Enumerable.Range(0, _swings.Count).Where(i => phases[i] == phase && sessions[i] is not null).Select(i => sessions[i]!).Distinct(StringComparer.Ordinal).SelectMany(session => _clocks[session]);
    }

    private SortedDictionary<string, double> CountedWords((string Condition, string Phase) asked)
    {
        var (phases, included, words) = (_swings.Texts("phase"), _swings.Booleans("included"), _swings.Texts(asked.Condition));
        return Shares(Enumerable.Range(0, _swings.Count).Where(i => phases[i] == asked.Phase && included[i] == true && words[i] is not null).Select(i => Plain(words[i]!)));
    }

    /// <summary>Spelling apart: case and blanks make no other ball.</summary>
    private static string Plain(string word) => string.Join(' ', word.ToLowerInvariant().Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    private static SortedDictionary<string, double> Shares(IEnumerable<string> words)
    {
        var counts = words.CountBy(word => word, StringComparer.Ordinal).ToList();
        double all = counts.Sum(pair => pair.Value);
        return new SortedDictionary<string, double>(counts.ToDictionary(pair => pair.Key, pair => pair.Value / all), StringComparer.Ordinal);
    }
}
