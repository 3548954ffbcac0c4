using SwingStudy.Statistics.Chance;

namespace SwingStudy.Statistics.Resampling;

/// <summary>AB design: the first occasion of B is drawn from a set of starts fixed beforehand.</summary>
/// <remarks>Source: Edgington (1975), Journal of Psychology 90:57–68.</remarks>
public sealed class PhaseStartScheme : AssignmentScheme
{
    private readonly int[] _starts;

    /// <summary>The scheme.</summary>
    /// <param name="length">Number of occasions.</param>
    /// <param name="starts">Admissible 0-based indices of the first B occasion; each leaves at least one occasion in either phase.</param>
    /// <exception cref="ArgumentException">There is no start, one is out of range, or one comes twice.</exception>
    public PhaseStartScheme(int length, IEnumerable<int> starts)
        : base(length)
    {
        _starts = [.. starts];
        if (_starts.Length == 0 || _starts.Distinct().Count() != _starts.Length)
            throw new ArgumentException("The admissible starts must be given, each once.", nameof(starts));
        if (_starts.Any(start => start < 1 || start >= length))
            throw new ArgumentException($"A start lies between 1 and {length - 1}, so that both phases have an occasion.", nameof(starts));
    }

    /// <summary>The scheme with every start that leaves at least <paramref name="least"/> occasions in either phase.</summary>
    /// <exception cref="ArgumentException">No start does.</exception>
    public static PhaseStartScheme WithAtLeast(int length, int least) =>
        new(length, Enumerable.Range(least, Math.Max(0, length - (2 * least) + 1)));

    /// <summary>Admissible 0-based indices of the first B occasion.</summary>
    public IReadOnlyList<int> Starts => _starts;

    /// <inheritdoc/>
    public override double Count => _starts.Length;

    /// <inheritdoc/>
    public override void VisitAll(AssignmentVisitor visit)
    {
        var assignment = new bool[Length];
        foreach (var start in _starts)
        {
            Fill(assignment, start);
            visit(assignment);
        }
    }

    /// <inheritdoc/>
    public override void Draw(Xoshiro256 chance, Span<bool> assignment) => Fill(assignment, _starts[chance.NextIndex(_starts.Length)]);

    /// <inheritdoc/>
    public override bool Admits(ReadOnlySpan<bool> assignment)
    {
        var start = assignment.IndexOf(true);
        return assignment.Length == Length && start >= 0 && !assignment[start..].Contains(false) && _starts.Contains(start);
    }

    /// <summary>The assignment that starts B at the 0-based index <paramref name="start"/>.</summary>
    public static bool[] Assignment(int length, int start)
    {
        var assignment = new bool[length];
        Fill(assignment, start);
        return assignment;
    }

    private static void Fill(Span<bool> assignment, int start)
    {
        assignment[..start].Clear();
        assignment[start..].Fill(true);
    }
}
