using SwingStudy.Statistics.Description;

namespace SwingStudy.Pipeline.Analyse;

/// <summary>The scatter of one outcome within the phases of one player, in sums that add up over players.</summary>
/// <param name="Swings">Values N.</param>
/// <param name="Sessions">Sessions b, a session in two phases counted in each.</param>
/// <param name="Phases">Phases a.</param>
/// <param name="SessionSquares">Σ n_ij (session mean − phase mean)².</param>
/// <param name="SwingSquares">Σ (value − session mean)².</param>
/// <param name="SquareCounts">Σ_i Σ_j n_ij²/n_i over phases i and sessions j.</param>
internal sealed record PlayerNoise(int Swings, int Sessions, int Phases, double SessionSquares, double SwingSquares, double SquareCounts)
{
    /// <summary>No values.</summary>
    public static PlayerNoise None { get; } = new(0, 0, 0, 0, 0, 0);

    /// <summary>Of the values of one player.</summary>
    public static PlayerNoise Of(IEnumerable<CountedValue> values)
    {
        var noise = None;
        foreach (var phase in values.GroupBy(value => value.Phase, StringComparer.Ordinal).OrderBy(group => group.Key, StringComparer.Ordinal))
        {
            var whole = Summary.Of([.. phase.Select(value => value.Value)]);
            Summary[] sessions = [.. phase.GroupBy(value => value.Session, StringComparer.Ordinal).OrderBy(group => group.Key, StringComparer.Ordinal)
                .Select(group => Summary.Of([.. group.Select(value => value.Value)]))];
            noise += new PlayerNoise(
                whole.Count,
                sessions.Length,
                1,
                sessions.Sum(session => session.Count * session.MeanMinus(whole) * session.MeanMinus(whole)),
                sessions.Sum(session => session.SumOfSquares),
                sessions.Sum(session => (double)session.Count * session.Count) / whole.Count);
        }

        return noise;
    }

    /// <summary>Both together.</summary>
    public static PlayerNoise operator +(PlayerNoise one, PlayerNoise other) => new(
        one.Swings + other.Swings,
        one.Sessions + other.Sessions,
        one.Phases + other.Phases,
        one.SessionSquares + other.SessionSquares,
        one.SwingSquares + other.SwingSquares,
        one.SquareCounts + other.SquareCounts);
}
