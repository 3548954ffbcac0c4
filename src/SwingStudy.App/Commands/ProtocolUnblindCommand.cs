using System.CommandLine;
using System.Text.Json;
using NodaTime;
using Spectre.Console;
using SwingStudy.App.Studies;
using SwingStudy.App.Terminal;
using SwingStudy.Domain.Protocols;

namespace SwingStudy.App.Commands;

/// <summary><c>protocol unblind</c>: ends the analyst's blindness, once and on record.</summary>
internal static class ProtocolUnblindCommand
{
    /// <summary>What a command answers that cannot show its result without telling phases.</summary>
    /// <param name="subject">What was asked for.</param>
    public static CommandResult Blind(string subject) => CommandResult.Failed(ExitCode.Refused, "analyst-blind", subject,
        "the analyst of this study is blind, and this output tells phases and directions", "an output with codes, or a study that is unblinded",
        "'swingstudy query' and 'swingstudy export' show codes in place of phases; 'swingstudy protocol unblind --reason TEXT' ends the blindness for good, on record.");

    public static Command Create(CommandRunner runner)
    {
        var reason = new Option<string?>("--reason") { Description = "Why; stands in the ledger. No names.", HelpName = "TEXT" };
        var known = new Option<string?>("--known") { Description = "What was already known of the results.", HelpName = "TEXT" };
        var command = new Command("unblind", "End the analyst's blindness: phases are shown from now on. It cannot be undone.") { reason, known };
        runner.BindWriting(command, (parsed, context, study) =>
        {
            if (study.Registry.Protocol.Unblinding() is { } earlier)
            {
                return CommandResult.Failed(ExitCode.Refused, "already-unblinded", "protocol unblind", FormattableString.Invariant($"{earlier.Actor} unblinded the study on {earlier.At:uuuu-MM-dd}"),
                    "a study whose analyst is blind", "Nothing needs to be done.");
            }

            if (study.Mask is null)
            {
                return CommandResult.Failed(ExitCode.Refused, "nobody-blind", "protocol unblind", "nobody is blind in this study", "a locked protocol with 'blinding: { analyst: masked }'",
                    "Nothing needs to be done.");
            }

            return string.IsNullOrWhiteSpace(parsed.GetValue(reason))
                ? CommandResult.Failed(ExitCode.Refused, "reason-missing", "--reason", "an unblinding without a reason", "why the analyst shall see phases, in words", "Add --reason TEXT; it stands in the ledger.")
                : Unblind(context, study, parsed.GetValue(reason)!, parsed.GetValue(known));
        });
        return command;
    }

    private static CommandResult Unblind(CommandContext context, OpenedStudy study, string reason, string? known)
    {
        var now = Instant.FromDateTimeOffset(context.Time.GetUtcNow());
        var taken = TakenData.Of(study, now);
        study.Registry.Act(context.Actor, "protocol.unblind", act =>
        {
            act.Add(new Unblinding(now, context.Actor, reason, known));
            return JsonSerializer.Serialize(new
            {
                reason,
                known,
                protocol_version = study.Setup.History.Current!.Number,
                taken = taken.Select(data => new { phase = data.Phase, sessions = data.Sessions, swings = data.Swings }),
                tables = study.Tables.Names().ToDictionary(name => name, name => study.Tables.Existing(name)!.CurrentVersion),
            });
        });
        context.Log.Information("The study is unblinded");
        return CommandResult.Done(
            new { at = now.ToString(), context.Actor, reason, known, codes = study.Mask!.Names.Select(name => new { name.Kind, name.Name, name.Code }) },
            console =>
            {
                console.WriteLine("The study is unblinded; it stands in the ledger. The codes meant:");
                Listing.Write(console, ["kind", "code", "name"], study.Mask.Names.Select(name => (IReadOnlyList<string>)[name.Kind, name.Code, name.Name]), "No codes.");
            });
    }
}
