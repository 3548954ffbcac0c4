using System.CommandLine;
using SwingStudy.App.Studies;
using SwingStudy.Domain.Problems;

namespace SwingStudy.App.Terminal;

/// <summary>Verbs that work on a study: opening it, and refusing in the designed way when it cannot be opened.</summary>
internal static class StudyVerb
{
    /// <summary>Problems of opening that are refusals by a rule rather than faults of a declaration.</summary>
    private static readonly string[] Refusals = ["study-locked", LockedProtocol.EditedCode, UnfinishedErasure.Code];

    /// <summary>Binds a verb that only looks.</summary>
    public static void BindReading(this CommandRunner runner, Command command, Func<ParseResult, CommandContext, OpenedStudy, CommandResult> verb) =>
        runner.Bind(command, (parsed, context) => With(OpenedStudy.ToRead(context.Folder, context.Time), study => verb(parsed, context, study)));

    /// <summary>Binds a verb that changes the study.</summary>
    /// <param name="runner">Runs it.</param>
    /// <param name="command">Its command.</param>
    /// <param name="verb">What it does.</param>
    /// <param name="tables">Names of tables that it will surely ask for, see <see cref="OpenedStudy.ToWrite"/>.</param>
    public static void BindWriting(
        this CommandRunner runner, Command command, Func<ParseResult, CommandContext, OpenedStudy, CommandResult> verb, IReadOnlyList<string>? tables = null) =>
        runner.Bind(command, (parsed, context) => With(OpenedStudy.ToWrite(context.Folder, context.Time, tables), study => verb(parsed, context, study)));

    /// <summary>Binds a verb that amends the protocol, which may lie there edited.</summary>
    public static void BindAmending(this CommandRunner runner, Command command, Func<ParseResult, CommandContext, OpenedStudy, CommandResult> verb) =>
        runner.Bind(command, (parsed, context) => With(OpenedStudy.ToAmend(context.Folder, context.Time), study => verb(parsed, context, study)));

    /// <summary>Binds the verb that erases a person, and finishes what an erasure that was cut short left.</summary>
    public static void BindErasing(this CommandRunner runner, Command command, Func<ParseResult, CommandContext, OpenedStudy, CommandResult> verb) =>
        runner.Bind(command, (parsed, context) => With(OpenedStudy.ToErase(context.Folder, context.Time), study => verb(parsed, context, study)));

    private static CommandResult With(Outcome<OpenedStudy> opened, Func<OpenedStudy, CommandResult> verb)
    {
        if (!opened.Succeeded(out var study))
        {
            var refused = opened.Problems.Any(problem => Refusals.Contains(problem.Code));
            return CommandResult.Failed(refused ? ExitCode.Refused : ExitCode.InvalidInput, opened.Problems);
        }

        using (study)
            return verb(study);
    }
}
