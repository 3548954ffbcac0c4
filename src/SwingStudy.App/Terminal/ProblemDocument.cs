using SwingStudy.Domain.Problems;

namespace SwingStudy.App.Terminal;

/// <summary>A problem as programs read it.</summary>
internal sealed record ProblemDocument(string Code, string File, int? Row, string? Column, string Found, string Expected, string Mend)
{
    /// <summary>Takes a problem apart.</summary>
    public static ProblemDocument From(Problem problem) => new(
        problem.Code, problem.Place.File, problem.Place.Row, problem.Place.Column, problem.Found, problem.Expected, problem.Mend);
}
