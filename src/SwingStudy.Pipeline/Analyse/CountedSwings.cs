using SwingStudy.Domain.Tables;

namespace SwingStudy.Pipeline.Analyse;

/// <summary>The swings that count, in order of player and time.</summary>
internal sealed class CountedSwings
{
    /// <summary>Columns of <c>swings</c> that are needed beside the outcomes.</summary>
    public static IReadOnlyList<string> Columns { get; } =
        ["swing_id", "participant", "session", "phase", "sequence", "struck_at", "is_practice", "included"];

    private readonly RowSet _swings;
    private readonly ExcludedValues _excluded;

    public CountedSwings(RowSet swings, RowSet flags)
    {
        var (participants, struck, sessions, sequence) = (swings.Texts("participant"), swings.Instants("struck_at"), swings.Texts("session"), swings.Integers("sequence"));
        var (included, phases) = (swings.Booleans("included"), swings.Texts("phase"));
        int[] rows = [.. Enumerable.Range(0, swings.Count).Where(i => included[i] == true && phases[i] is not null)
            .OrderBy(i => participants[i], StringComparer.Ordinal).ThenBy(i => struck[i]).ThenBy(i => sessions[i], StringComparer.Ordinal).ThenBy(i => sequence[i])];
        _swings = swings.Select(rows);
        _excluded = new ExcludedValues(flags);
    }

    /// <summary>Rows of <c>swings</c> that count.</summary>
    public RowSet Rows => _swings;

    /// <summary>The values of one variable that count.</summary>
    public IReadOnlyList<CountedValue> Values(string variable)
    {
        var values = _swings[variable] is IntegerColumn whole ? [.. whole.Values.Select(value => value ?? double.NaN)] : _swings.Numbers(variable);
        var (ids, participants, sessions, phases) = (_swings.Texts("swing_id"), _swings.Texts("participant"), _swings.Texts("session"), _swings.Texts("phase"));
        var order = _swings.Integers("sequence");
        var counted = new List<CountedValue>();
        for (var i = 0; i < values.Length; i++)
        {
            if (!double.IsNaN(values[i]) && !_excluded.Contains(ids[i]!, variable))
                counted.Add(new CountedValue(participants[i]!, sessions[i]!, phases[i]!, ids[i]!, order[i] ?? i, values[i]));
        }

        return counted;
    }
}
