using System.Diagnostics.CodeAnalysis;
using SwingStudy.Domain.Problems;

namespace SwingStudy.Ingestion.Readers;

/// <summary>Takes outcomes apart where one step follows the other.</summary>
internal static class OutcomeParts
{
    /// <summary>The value, or the problems that stood in its way.</summary>
    public static bool Succeeded<T>(this Outcome<T> outcome, [NotNullWhen(true)] out T? value, out IReadOnlyList<Problem> problems)
        where T : notnull
    {
        problems = outcome.Problems;
        return outcome.Succeeded(out value);
    }
}
