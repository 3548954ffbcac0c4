using SwingStudy.Statistics.Chance;

namespace SwingStudy.Statistics.Resampling;

/// <summary>The set of admissible ways to give the measurement occasions of one case their conditions, each equally likely.</summary>
/// <remarks>
/// An assignment is one flag an occasion: false = condition A, true = condition B. The analysis goes through exactly the set that the draw was made
/// from. Source: Edgington and Onghena (2007), Randomization Tests, 4th ed., ch. 11.
/// </remarks>
public abstract class AssignmentScheme
{
    /// <summary>The schemes are the nested ones of this assembly.</summary>
    private protected AssignmentScheme(int length)
    {
        Length = length;
    }

    /// <summary>Number of occasions.</summary>
    public int Length { get; }

    /// <summary>Number of admissible assignments; infinity beyond the range of numbers.</summary>
    public abstract double Count { get; }

    /// <summary>Calls <paramref name="visit"/> once for each admissible assignment; the span is only lent.</summary>
    public abstract void VisitAll(AssignmentVisitor visit);

    /// <summary>Fills <paramref name="assignment"/> with a random admissible assignment.</summary>
    public abstract void Draw(Xoshiro256 chance, Span<bool> assignment);

    /// <summary>Whether the assignment is one of the set.</summary>
    public abstract bool Admits(ReadOnlySpan<bool> assignment);
}
