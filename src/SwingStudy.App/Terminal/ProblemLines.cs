using Spectre.Console;
using SwingStudy.Domain.Problems;

namespace SwingStudy.App.Terminal;

/// <summary>Problems as people read them: what was found and where, what was expected, what to do.</summary>
internal static class ProblemLines
{
    /// <summary>Writes each problem on three lines at most.</summary>
    public static void Write(IAnsiConsole console, IEnumerable<Problem> problems)
    {
        foreach (var problem in problems)
        {
            console.MarkupLineInterpolated($"[bold]{problem.Place.ToString()}[/]: {problem.Found} [grey]({problem.Code})[/]");
            if (problem.Expected.Length > 0)
                console.MarkupLineInterpolated($"  expected: {problem.Expected}");
            if (problem.Mend.Length > 0)
                console.MarkupLineInterpolated($"  to mend:  {problem.Mend}");
        }
    }
}
