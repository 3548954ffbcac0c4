using NodaTime;
using SwingStudy.Domain.Tables;
using SwingStudy.Pipeline.Analyse.Findings.Rivals;
using SwingStudy.Pipeline.Running;
using SwingStudy.Statistics.Change;
using SwingStudy.Statistics.Description;

namespace SwingStudy.Pipeline.Analyse.Findings;

/// <summary>The facts of every player in every comparison, p values adjusted over the planned ones.</summary>
internal sealed class PlayerChanges
{
    private readonly FindingSettings _settings;
    private readonly CountedSwings _counted;
    private readonly RowSet _noise;
    private readonly EstimateLookup _trends;
    private readonly IReadOnlyList<PlayerRows> _players;

    public PlayerChanges(FindingSettings settings, StageInput input)
    {
        _settings = settings;
        var all = input.Rows("swings");
        _counted = new CountedSwings(all, input.Rows("flags"));
        _noise = input.Rows("noise");
        _trends = new EstimateLookup(input.Rows("trends"), "term");
        var devices = new SwingDevices(input.Rows("captures"), input.Rows("links"), settings.Sources);
        var clocks = Clocks(input.Rows("clocks"));
        var zone = DateTimeZoneProviders.Tzdb[settings.Zone];
        var rows = all.Texts("participant").Index().ToLookup(pair => pair.Item ?? "", pair => pair.Index, StringComparer.Ordinal);
        _players = [.. rows.OrderBy(group => group.Key, StringComparer.Ordinal).Select(group => new PlayerRows(group.Key, all.Select([.. group]), devices, clocks, zone))];
    }

    /// <summary>Outcome by outcome, contrast by contrast, player by player. Comparisons that nobody planned are there when some player has both phases.</summary>
    public List<PlayerChange> All()
    {
        var changes = new List<PlayerChange>();
        foreach (var outcome in _settings.Outcomes.Where(outcome => outcome.IsNumeric))
        {
            var values = _counted.Values(outcome.Name).ToLookup(value => value.Participant, StringComparer.Ordinal);
            foreach (var contrast in _settings.Contrasts)
            {
                var basis = outcome.Contrasts.Contains(contrast.Name) ? Basis.Planned : outcome.Late.ContainsKey(contrast.Name) ? Basis.Amended : Basis.Exploratory;
                var comparison = new PlayerChange[_players.Count];
                Parallel.For(0, comparison.Length, i => comparison[i] = Of(_players[i], [.. values[_players[i].Participant]], outcome, contrast, basis));
                if (basis != Basis.Exploratory || comparison.Any(change => change.Estimate is not null))
                    changes.AddRange(comparison);
            }
        }

        return Adjusted(changes);
    }

    private PlayerChange Of(PlayerRows player, IReadOnlyList<CountedValue> values, OutcomeSetting outcome, ContrastSetting contrast, Basis basis)
    {
        var data = PhaseValues.Of(values, contrast);
        var pooled = StudyNoise.Of(PooledNoise.Sum(_noise, outcome.Name, player.Participant));
        var change = HonestChangeRule.Judge(data, pooled, outcome.Worthwhile ?? 0, _settings.Confidence);
        double? before = data.Before.Count == 0 ? null : data.Before.Average(session => Summary.Of(session).Mean!.Value);
        var compared = new ComparedPlayer(player, outcome, contrast, values, change, _trends, _settings);
        return new PlayerChange(compared, basis, before, RivalSearch.Of(compared)) { CannotTell = Evidence.WhyNot(compared), AdjustedP = change.Estimate.P };
    }

    /// <summary>Adjusts within a player over the planned comparisons of outcomes of one role.</summary>
    private List<PlayerChange> Adjusted(List<PlayerChange> changes)
    {
        var all = changes.ToArray();
        var families = changes.Index().Where(pair => pair.Item is { Basis: Basis.Planned, CannotTell: null } && pair.Item.Change.Estimate.P is not null)
            .GroupBy(pair => (pair.Item.Participant, pair.Item.Outcome.Role));
        foreach (var family in families.Select(family => family.ToList()))
        {
            var adjusted = AdjustedP.Of(_settings.Multiplicity, [.. family.Select(pair => pair.Item.Change.Estimate.P)]);
            for (var i = 0; i < family.Count; i++)
                all[family[i].Index] = family[i].Item with { AdjustedP = adjusted[i], FamilySize = family.Count };
        }

        return [.. all];
    }

    private static ILookup<string, SessionClock> Clocks(RowSet rows)
    {
        var (sessions, sources, drifts) = (rows.Texts("session"), rows.Texts("source"), rows.Numbers("drift_ppm"));
        return Enumerable.Range(0, rows.Count).Where(i => sessions[i] is not null && sources[i] is not null && !double.IsNaN(drifts[i]))
            .Select(i => new SessionClock(sessions[i]!, sources[i]!, drifts[i])).ToLookup(clock => clock.Session, StringComparer.Ordinal);
    }
}
