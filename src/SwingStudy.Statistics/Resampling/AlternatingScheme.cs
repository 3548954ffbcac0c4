using SwingStudy.Statistics.Chance;

namespace SwingStudy.Statistics.Resampling;

/// <summary>Alternating conditions: fixed numbers of A and B occasions in random order, with at most so many of one condition in a row.</summary>
/// <remarks>Source: Onghena and Edgington (1994), Behaviour Research and Therapy 32:783–786.</remarks>
public sealed class AlternatingScheme : AssignmentScheme
{
    private readonly int _countA;
    private readonly int _countB;
    private readonly int _longestRun;

    // _ways[a, b, run, last]: admissible completions with a and b occasions left after a run of the last condition.
    private readonly double[,,,] _ways;

    /// <summary>The scheme.</summary>
    /// <param name="countA">Occasions of condition A, at least 1.</param>
    /// <param name="countB">Occasions of condition B, at least 1.</param>
    /// <param name="longestRun">Largest number of equal conditions in a row; the number of occasions leaves the order free.</param>
    /// <exception cref="ArgumentException">A number is below 1, or no order keeps the rule.</exception>
    public AlternatingScheme(int countA, int countB, int longestRun)
        : base(countA + countB)
    {
        if (countA < 1 || countB < 1 || longestRun < 1)
            throw new ArgumentException("Both conditions need an occasion, and a run at least the length 1.", nameof(countA));
        _countA = countA;
        _countB = countB;
        _longestRun = Math.Min(longestRun, Math.Max(countA, countB));
        _ways = new double[countA + 1, countB + 1, _longestRun + 1, 2];
        for (var a = 0; a <= countA; a++)
        {
            for (var b = 0; b <= countB; b++)
            {
                for (var run = _longestRun; run >= 0; run--)
                {
                    for (var last = 0; last < 2; last++)
                        _ways[a, b, run, last] = a + b == 0 ? 1 : Ways(a, b, run, last, 0) + Ways(a, b, run, last, 1);
                }
            }
        }

        Count = _ways[countA, countB, 0, 0];
        if (!double.IsFinite(Count))
            throw new ArgumentException($"{Length} occasions have more orders than a number can hold.", nameof(countA));
        if (Count == 0)
            throw new ArgumentException($"No order of {countA} and {countB} occasions keeps runs at {longestRun} or less.", nameof(longestRun));
    }

    /// <inheritdoc/>
    public override double Count { get; }

    /// <inheritdoc/>
    public override void VisitAll(AssignmentVisitor visit)
    {
        var assignment = new bool[Length];
        Next(0, _countA, _countB, 0, 0);

        void Next(int at, int a, int b, int run, int last)
        {
            if (at == Length)
            {
                visit(assignment);
                return;
            }

            for (var condition = 0; condition < 2; condition++)
            {
                if (Ways(a, b, run, last, condition) == 0)
                    continue;
                assignment[at] = condition == 1;
                Next(at + 1, a - (1 - condition), b - condition, run > 0 && condition == last ? run + 1 : 1, condition);
            }
        }
    }

    /// <inheritdoc/>
    public override void Draw(Xoshiro256 chance, Span<bool> assignment)
    {
        int a = _countA, b = _countB, run = 0, last = 0;
        for (var at = 0; at < Length; at++)
        {
            var forA = Ways(a, b, run, last, 0);
            var condition = chance.NextUnit() * (forA + Ways(a, b, run, last, 1)) < forA ? 0 : 1;
            assignment[at] = condition == 1;
            a -= 1 - condition;
            b -= condition;
            run = run > 0 && condition == last ? run + 1 : 1;
            last = condition;
        }
    }

    /// <inheritdoc/>
    public override bool Admits(ReadOnlySpan<bool> assignment)
    {
        if (assignment.Length != Length || assignment.Count(true) != _countB)
            return false;
        var run = 0;
        for (var i = 0; i < assignment.Length; i++)
        {
            run = i > 0 && assignment[i] == assignment[i - 1] ? run + 1 : 1;
            if (run > _longestRun)
                return false;
        }

        return true;
    }

    // Admissible completions when the next occasion gets the condition.
    private double Ways(int a, int b, int run, int last, int condition)
    {
        if ((condition == 0 ? a : b) == 0)
            return 0;
        var next = run > 0 && condition == last ? run + 1 : 1;
        return next > _longestRun ? 0 : _ways[a - (1 - condition), b - condition, next, condition];
    }
}
