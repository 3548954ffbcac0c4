using SwingStudy.Statistics.Description;

namespace SwingStudy.Pipeline.Analyse;

/// <summary>A complete table of trials: the first k of each player, k being the least that any player with two or more has.</summary>
/// <param name="Values">Player after player.</param>
/// <param name="Players">Number of players n.</param>
/// <param name="Trials">k.</param>
internal sealed record TrialValues(double[] Values, int Players, int Trials)
{
    /// <summary>Session means as trials.</summary>
    public static TrialValues OfSessionMeans(IEnumerable<CountedValue> values) => Of(values.GroupBy(value => value.Participant, StringComparer.Ordinal)
        .Select(player => player.GroupBy(value => value.Session, StringComparer.Ordinal)
            .Select(session => Summary.Of([.. session.Select(value => value.Value)]).Mean!.Value).ToArray()));

    /// <summary>Swings as trials.</summary>
    public static TrialValues OfSwings(IEnumerable<CountedValue> values) => Of(values.GroupBy(value => value.Participant, StringComparer.Ordinal)
        .Select(player => player.Select(value => value.Value).ToArray()));

    /// <summary>Why there is no table, or null.</summary>
    public string? Lacks => Players < 2 ? $"needs two players with at least two measurements each, got {Players}" : null;

    private static TrialValues Of(IEnumerable<double[]> players)
    {
        List<double[]> usable = [.. players.Where(trials => trials.Length >= 2)];
        var k = usable.Count == 0 ? 0 : usable.Min(trials => trials.Length);
        return new TrialValues([.. usable.SelectMany(trials => trials.Take(k))], usable.Count, k);
    }
}
