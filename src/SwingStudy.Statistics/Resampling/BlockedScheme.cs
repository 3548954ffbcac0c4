using SwingStudy.Statistics.Chance;

namespace SwingStudy.Statistics.Resampling;

/// <summary>Alternating conditions in randomized blocks of two: each block is AB or BA.</summary>
/// <remarks>Source: Edgington and Onghena (2007), Randomization Tests, 4th ed., ch. 11.</remarks>
public sealed class BlockedScheme : AssignmentScheme
{
    private readonly int _blocks;

    /// <summary>The scheme.</summary>
    /// <param name="blocks">Number of blocks of two occasions, 1 to 60.</param>
    /// <exception cref="ArgumentException">The number is out of range.</exception>
    public BlockedScheme(int blocks)
        : base(2 * blocks)
    {
        if (blocks is < 1 or > 60)
            throw new ArgumentException($"Between 1 and 60 blocks are possible; got {blocks}.", nameof(blocks));
        _blocks = blocks;
    }

    /// <inheritdoc/>
    public override double Count => Math.Pow(2, _blocks);

    /// <inheritdoc/>
    public override void VisitAll(AssignmentVisitor visit)
    {
        var assignment = new bool[Length];
        for (var pattern = 0L; pattern < 1L << _blocks; pattern++)
        {
            Fill(assignment, (ulong)pattern);
            visit(assignment);
        }
    }

    /// <inheritdoc/>
    public override void Draw(Xoshiro256 chance, Span<bool> assignment) => Fill(assignment, chance.NextBits());

    /// <inheritdoc/>
    public override bool Admits(ReadOnlySpan<bool> assignment)
    {
        if (assignment.Length != Length)
            return false;
        for (var i = 0; i < assignment.Length; i += 2)
        {
            if (assignment[i] == assignment[i + 1])
                return false;
        }

        return true;
    }

    private void Fill(Span<bool> assignment, ulong pattern)
    {
        for (var block = 0; block < _blocks; block++)
        {
            assignment[2 * block] = ((pattern >> block) & 1) == 1;
            assignment[(2 * block) + 1] = !assignment[2 * block];
        }
    }
}
