using System.CommandLine;
using System.Globalization;
using Spectre.Console;
using SwingStudy.App.Studies;
using SwingStudy.App.Terminal;
using SwingStudy.Domain.Declarations;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Protocols;
using SwingStudy.Domain.Variables;

namespace SwingStudy.App.Commands;

/// <summary><c>protocol check|show|lock|amend|restore|history|diff</c>.</summary>
internal static class ProtocolCommand
{
    public static Command Create(CommandRunner runner) => new("protocol", "The plan of a study: check it, lock it before data, change it only on record, draw from it, plan its size.")
    {
        Verb(runner, "check", "Is the protocol complete and consistent, and can it answer its question?", Check),
        Verb(runner, "show", "Show question, phases, outcomes, rules and analysis.", (protocol, _) => Show(protocol)),
        ProtocolLockCommand.Lock(runner),
        ProtocolLockCommand.Amend(runner),
        ProtocolLockCommand.Restore(runner),
        ProtocolTextCommand.History(runner),
        ProtocolTextCommand.Diff(runner),
        ProtocolScheduleCommand.Create(runner),
        ProtocolUnblindCommand.Create(runner),
    };

    private static Command Verb(CommandRunner runner, string name, string description, Func<Protocol, VariableDictionary, CommandResult> act)
    {
        var file = new Argument<string?>("file") { Description = "A protocol file, or the name of a shipped one (default: the study's).", Arity = ArgumentArity.ZeroOrOne };
        var command = new Command(name, description) { file };
        runner.Bind(command, (parsed, context) =>
        {
            if (!DeclarationPlaces.ProtocolFile(context.Folder, parsed.GetValue(file)).Succeeded(out var path, out var problems)
                || !DeclarationPlaces.Dictionary(context.Folder, null).Succeeded(out var dictionary, out problems)
                || !ProtocolReader.Read(path, dictionary).Succeeded(out var protocol, out problems))
                return CommandResult.Failed(ExitCode.InvalidInput, problems);
            return act(protocol, dictionary);
        });
        return command;
    }

    private static CommandResult Check(Protocol protocol, VariableDictionary dictionary)
    {
        var review = ProtocolCheck.Review(protocol, dictionary);
        var exit = review.Problems.Count > 0 ? ExitCode.InvalidInput : review.Warnings.Count > 0 ? ExitCode.NeedsPerson : ExitCode.Done;
        return new CommandResult(
            exit,
            new { protocol.Name, Version = protocol.Version.ToString(), Problems = Documents(review.Problems), Warnings = Documents(review.Warnings) },
            console =>
            {
                console.MarkupLineInterpolated($"Protocol {protocol.Name} {protocol.Version.ToString()}: {review.Problems.Count} problems, {review.Warnings.Count} warnings.");
                ProblemLines.Write(console, review.Problems);
                ProblemLines.Write(console, review.Warnings);
            });
    }

    private static IEnumerable<ProblemDocument> Documents(IEnumerable<Problem> problems) => problems.Select(ProblemDocument.From);

    private static CommandResult Show(Protocol protocol) => CommandResult.Done(protocol with { File = Path.GetFileName(protocol.File) }, console =>
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
