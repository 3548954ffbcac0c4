using SwingStudy.Statistics.Description;

namespace SwingStudy.Statistics.Change;

/// <summary>The scatter of one outcome within phases, in sums that add up over players.</summary>
/// <param name="Swings">Values N.</param>
/// <param name="Sessions">Sessions b, a session in two phases counted in each.</param>
/// <param name="Phases">Phases of players a.</param>
/// <param name="SessionSquares">Σ n_ij (session mean − phase mean)².</param>
/// <param name="SwingSquares">Σ (value − session mean)².</param>
/// <param name="SquareCounts">Σ_i Σ_j n_ij²/n_i over phases i and sessions j.</param>
public sealed record NoiseSums(int Swings, int Sessions, int Phases, double SessionSquares, double SwingSquares, double SquareCounts)
{
    /// <summary>No values.</summary>
    public static NoiseSums None { get; } = new(0, 0, 0, 0, 0, 0);

    /// <summary>Of one player in one phase.</summary>
    /// <param name="sessions">Sessions with their values, all finite; one without values counts for nothing.</param>
    /// <exception cref="ArgumentException">A value is not finite.</exception>
    public static NoiseSums OfPhase(IEnumerable<double[]> sessions)
    {
        double[][] filled = [.. sessions.Where(session => session.Length > 0)];
        if (filled.Length == 0)
            return None;
        var whole = Summary.Of([.. filled.SelectMany(session => session)]);
        Summary[] summaries = [.. filled.Select(session => Summary.Of(session))];
        return new NoiseSums(
            whole.Count,
            summaries.Length,
            1,
            summaries.Sum(session => session.Count * session.MeanMinus(whole) * session.MeanMinus(whole)),
            summaries.Sum(session => session.SumOfSquares),
            summaries.Sum(session => (double)session.Count * session.Count) / whole.Count);
    }

    /// <summary>Both together.</summary>
    public static NoiseSums operator +(NoiseSums one, NoiseSums other) => new(
        one.Swings + other.Swings,
        one.Sessions + other.Sessions,
        one.Phases + other.Phases,
        one.SessionSquares + other.SessionSquares,
        one.SwingSquares + other.SwingSquares,
        one.SquareCounts + other.SquareCounts);
}
