using SwingStudy.Statistics.Chance;

namespace SwingStudy.Statistics.Resampling;

/// <summary>Withdrawal designs (ABA, ABAB, …): all change points are drawn at once, every phase keeping a least length.</summary>
/// <remarks>Source: Onghena (1992), Behavioral Assessment 14:153–171.</remarks>
public sealed class PhaseChangeScheme : AssignmentScheme
{
    private readonly int _phases;
    private readonly int _least;

    /// <summary>The scheme: phases A, B, A, … in turn.</summary>
    /// <param name="length">Number of occasions.</param>
    /// <param name="phases">Number of phases, at least 2.</param>
    /// <param name="least">Least number of occasions of a phase, at least 1.</param>
    /// <exception cref="ArgumentException">The phases do not fit into the occasions.</exception>
    public PhaseChangeScheme(int length, int phases, int least)
        : base(length)
    {
        if (phases < 2 || least < 1 || (long)phases * least > length)
            throw new ArgumentException($"{phases} phases of at least {least} occasions do not fit into {length} occasions.", nameof(length));
        _phases = phases;
        _least = least;
    }

    /// <inheritdoc/>
    public override double Count =>
        Choices.Binomial(Length - (_phases * _least) + _phases - 1, _phases - 1);

    /// <inheritdoc/>
    public override void VisitAll(AssignmentVisitor visit)
    {
        var assignment = new bool[Length];
        Phase(0, 0);

        void Phase(int phase, int from)
        {
            if (phase == _phases - 1)
            {
                assignment.AsSpan(from).Fill(phase % 2 == 1);
                visit(assignment);
                return;
            }

            for (var to = from + _least; to <= Length - ((_phases - phase - 1) * _least); to++)
            {
                assignment.AsSpan(from, to - from).Fill(phase % 2 == 1);
                Phase(phase + 1, to);
            }
        }
    }

    /// <inheritdoc/>
    public override void Draw(Xoshiro256 chance, Span<bool> assignment)
    {
        // Spare occasions and bars between phases in random order: every composition is equally likely.
        var spare = Length - (_phases * _least);
        Span<bool> bars = new bool[spare + _phases - 1];
        bars[..(_phases - 1)].Fill(true);
        Shuffle.All(bars, chance);
        int phase = 0, at = 0;
        assignment.Slice(0, _least).Clear();
        at = _least;
        foreach (var bar in bars)
        {
            if (bar)
            {
                phase++;
                assignment.Slice(at, _least).Fill(phase % 2 == 1);
                at += _least;
            }
            else
            {
                assignment[at++] = phase % 2 == 1;
            }
        }
    }

    /// <inheritdoc/>
    public override bool Admits(ReadOnlySpan<bool> assignment)
    {
        if (assignment.Length != Length || assignment[0])
            return false;
        int phases = 1, run = 1;
        for (var i = 1; i < assignment.Length; i++)
        {
            if (assignment[i] == assignment[i - 1])
            {
                run++;
                continue;
            }

            if (run < _least)
                return false;
            phases++;
            run = 1;
        }

        return phases == _phases && run >= _least;
    }
}
