namespace SwingStudy.Statistics.Resampling;

/// <summary>The shape of one assignment: how many occasions, and how they run.</summary>
/// <param name="Length">Number of occasions.</param>
/// <param name="First">Occasions of condition A.</param>
/// <param name="Runs">Number of runs of equal conditions.</param>
/// <param name="Shortest">Length of the shortest run.</param>
/// <param name="Longest">Length of the longest run.</param>
internal readonly record struct ConditionOrder(int Length, int First, int Runs, int Shortest, int Longest)
{
    /// <summary>The shape of an assignment of at least one occasion.</summary>
    public static ConditionOrder Of(ReadOnlySpan<bool> assignment)
    {
        int runs = 0, shortest = assignment.Length, longest = 0;
        for (int start = 0, end; start < assignment.Length; start = end)
        {
            end = start + 1;
            while (end < assignment.Length && assignment[end] == assignment[start])
                end++;
            runs++;
            shortest = Math.Min(shortest, end - start);
            longest = Math.Max(longest, end - start);
        }

        return new ConditionOrder(assignment.Length, assignment.Count(false), runs, shortest, longest);
    }
}
