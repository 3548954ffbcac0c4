using SwingStudy.Statistics.Description;

namespace SwingStudy.Pipeline.Analyse.Randomization;

/// <summary>One player's session means in order of time, with and without the intervention: the occasions of a randomization test.</summary>
/// <param name="Means">Mean of each session.</param>
/// <param name="WithIntervention">Whether the session was one with the intervention.</param>
internal sealed record ConditionSeries(double[] Means, bool[] WithIntervention)
{
    /// <summary>Sessions of baseline and intervention phases with a value that counts.</summary>
    public static ConditionSeries Of(IEnumerable<CountedValue> values, IReadOnlyList<PhaseSetting> phases)
    {
        var with = phases.Where(phase => phase.IsBaseline || phase.IsIntervention).ToDictionary(phase => phase.Name, phase => phase.IsIntervention, StringComparer.Ordinal);
        var sessions = values.Where(value => with.ContainsKey(value.Phase)).GroupBy(value => value.Session, StringComparer.Ordinal).ToList();
        return new ConditionSeries(
            [.. sessions.Select(session => Summary.Of([.. session.Select(value => value.Value)]).Mean!.Value)],
            [.. sessions.Select(session => with[session.First().Phase])]);
    }

    /// <summary>Sessions before the intervention comes for the first time; all of them when it never came.</summary>
    public int Start => Array.IndexOf(WithIntervention, true) is >= 0 and var start ? start : Means.Length;

    /// <summary>Whether the intervention, once begun, was never taken away.</summary>
    public bool IsOneChange => !WithIntervention.AsSpan(Start).Contains(false);

    /// <summary>The first sessions.</summary>
    public ConditionSeries First(int count) => new(Means[..Math.Min(count, Means.Length)], WithIntervention[..Math.Min(count, Means.Length)]);
}
