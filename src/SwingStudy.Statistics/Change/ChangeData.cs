using SwingStudy.Statistics.Description;

namespace SwingStudy.Statistics.Change;

/// <summary>One player's swings in two phases, session by session, in time order.</summary>
/// <param name="Before">Sessions of the first phase; each holds its swings in time order.</param>
/// <param name="After">Sessions of the second phase.</param>
/// <param name="SharedSessions">Sessions that hold swings of both phases. Each counts as one session in either phase.</param>
public sealed record ChangeData(IReadOnlyList<double[]> Before, IReadOnlyList<double[]> After, int SharedSessions)
{
    /// <summary>All sessions of both phases.</summary>
    internal IEnumerable<double[]> Sessions => Before.Concat(After);

    /// <summary>Whether some session has a second swing, so that the player's own scatter from swing to swing can be seen.</summary>
    internal bool HasSwingDegrees => Sessions.Any(session => session.Length > 1);

    /// <summary>Arranges rows.</summary>
    /// <param name="values">One a swing, in time order, all finite.</param>
    /// <param name="sessions">Session of each swing.</param>
    /// <param name="phases">0 for the first phase, 1 for the second.</param>
    /// <exception cref="ArgumentException">The lengths differ, a value is not finite, or a phase is neither 0 nor 1.</exception>
    public static ChangeData Of(ReadOnlySpan<double> values, ReadOnlySpan<int> sessions, ReadOnlySpan<int> phases)
    {
        if (values.Length != sessions.Length || values.Length != phases.Length)
            throw new ArgumentException($"Columns need equal lengths; got {values.Length}, {sessions.Length} and {phases.Length}.", nameof(values));
        Finite.Require(values, nameof(values));
        var grouped = new[] { new SortedDictionary<int, List<double>>(), new SortedDictionary<int, List<double>>() };
        for (var i = 0; i < values.Length; i++)
        {
            if (phases[i] is not (0 or 1))
                throw new ArgumentException($"A phase is 0 (before) or 1 (after); place {i + 1} holds {phases[i]}.", nameof(phases));
            var phase = grouped[phases[i]];
            if (!phase.TryGetValue(sessions[i], out var list))
                phase[sessions[i]] = list = [];
            list.Add(values[i]);
        }

        return new ChangeData(
            [.. grouped[0].Values.Select(v => v.ToArray())],
            [.. grouped[1].Values.Select(v => v.ToArray())],
            grouped[0].Keys.Count(grouped[1].ContainsKey));
    }
}
