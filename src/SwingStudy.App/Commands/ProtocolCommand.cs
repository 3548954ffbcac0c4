using System.CommandLine;
using System.Globalization;
using Spectre.Console;
using SwingStudy.App.Studies;
using SwingStudy.App.Terminal;
using SwingStudy.Domain.Declarations;
using SwingStudy.Domain.Protocols;

namespace SwingStudy.App.Commands;

/// <summary><c>protocol</c>: its verbs, and <c>show</c>.</summary>
internal static class ProtocolCommand
{
    public static Command Create(CommandRunner runner) => new("protocol", "The plan of a study: check it, lock it before data, change it only on record, draw from it, plan its size.")
    {
        ProtocolCheckCommand.Create(runner),
        Show(runner),
        ProtocolLockCommand.Lock(runner),
        ProtocolLockCommand.Amend(runner),
        ProtocolLockCommand.Restore(runner),
        ProtocolTextCommand.History(runner),
        ProtocolTextCommand.Diff(runner),
        ProtocolScheduleCommand.Create(runner),
        ProtocolPlanCommand.Create(runner),
        ProtocolUnblindCommand.Create(runner),
    };

    private static Command Show(CommandRunner runner)
    {
        var file = new Argument<string?>("file") { Description = "A protocol file, or the name of a shipped one (default: the study's).", Arity = ArgumentArity.ZeroOrOne };
        var command = new Command("show", "Show question, phases, outcomes, rules and analysis.") { file };
        runner.Bind(command, (parsed, context) =>
        {
            if (parsed.GetValue(file) is null && LockedProtocol.EditedIn(context.Folder, context.Time) is { } edited)
                return CommandResult.Failed(ExitCode.Refused, [edited]);
            return DeclarationPlaces.ProtocolFile(context.Folder, parsed.GetValue(file)).Succeeded(out var path, out var problems)
                && DeclarationPlaces.Dictionary(context.Folder, null).Succeeded(out var dictionary, out problems)
                && ProtocolReader.Read(path, dictionary).Succeeded(out var protocol, out problems)
                ? Shown(protocol)
                : CommandResult.Failed(ExitCode.InvalidInput, problems);
        });
        return command;
    }

    private static CommandResult Shown(Protocol protocol) => CommandResult.Done(protocol with { File = Path.GetFileName(protocol.File) }, console =>
    {
        console.MarkupLineInterpolated($"[bold]{protocol.Title}[/] ({protocol.Name} {protocol.Version.ToString()})");
        console.WriteLine(protocol.Question);
        Listing.Write(console, ["phase", "role", "sessions", "swings a session", "days after", "cue", "why"], protocol.Phases.Select(phase => (IReadOnlyList<string>)
            [phase.Name, phase.Role.ToString(), Text(phase.MinimumSessions), Text(phase.MinimumSwings), Text(phase.DaysAfter), phase.Cue ?? "", phase.Why]), "No phases.");
        Listing.Write(console, ["outcome", "role", "smallest worthwhile change", "because"], protocol.Outcomes.Select(outcome => (IReadOnlyList<string>)
            [outcome.Variable, outcome.Role.ToString(), Text(outcome.SmallestWorthwhile?.Amount), outcome.SmallestWorthwhile?.Reason ?? ""]), "No outcomes.");
        Listing.Write(console, ["contrast", "from", "to"], protocol.Contrasts.Select(contrast => (IReadOnlyList<string>)[contrast.Name, contrast.From, contrast.To]), "No contrasts.");
        Listing.Write(console, ["screening rule", "variables", "action", "why"], protocol.Screening.Select(rule => (IReadOnlyList<string>)
            [rule.Rule, string.Join(", ", rule.Variables), rule.Action.ToString(), rule.Why]), "No screening rules.");
        foreach (var caution in protocol.Cautions)
            console.MarkupLineInterpolated($"Caution: {caution}");
    });

    private static string Text(double? number) => number?.ToString(CultureInfo.InvariantCulture) ?? "";
}
