using Spectre.Console;
using SwingStudy.Domain.Problems;

namespace SwingStudy.App.Terminal;

/// <summary>What a command gives back: one document, shown as JSON with <c>--json</c> and rendered for people without.</summary>
/// <param name="Exit">Exit code.</param>
/// <param name="Document">Serialized to standard output with <c>--json</c>; property names become snake_case.</param>
/// <param name="Render">Writes the same for people.</param>
internal sealed record CommandResult(ExitCode Exit, object Document, Action<IAnsiConsole> Render)
{
    /// <summary>Done, with a document.</summary>
    public static CommandResult Done(object document, Action<IAnsiConsole> render) => new(ExitCode.Done, document, render);

    /// <summary>Nothing but problems, each on a line of its own.</summary>
    public static CommandResult Failed(ExitCode exit, IReadOnlyList<Problem> problems) => new(
        exit,
        new { problems = problems.Select(ProblemDocument.From) },
        console => ProblemLines.Write(console, problems));

    /// <summary>One problem that is not about a file: a rule forbids the act, or what was named does not exist.</summary>
    public static CommandResult Failed(ExitCode exit, string code, string subject, string found, string expected, string mend) =>
        Failed(exit, [new Problem(code, new Place(subject), found, expected, mend)]);
}
