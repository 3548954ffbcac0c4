using SwingStudy.Domain.Problems;

namespace SwingStudy.Bench;

/// <summary>What a task cannot do without.</summary>
internal static class Required
{
    /// <summary>The value; a fault that lists the problems when there is none.</summary>
    public static T Of<T>(Outcome<T> outcome)
        where T : notnull =>
        outcome.Succeeded(out var value) ? value : throw new InvalidOperationException(string.Join(Environment.NewLine, outcome.Problems));
}
