using System.CommandLine;
using Spectre.Console;
using SwingStudy.App.Studies;
using SwingStudy.App.Terminal;
using SwingStudy.Domain.Protocols;
using SwingStudy.Storage.Files;
using SwingStudy.Storage.Registry;

namespace SwingStudy.App.Commands;

/// <summary><c>protocol lock|amend|restore</c>: the plan is fixed before data, changed only on record, and put back when somebody edited it.</summary>
internal static class ProtocolLockCommand
{
    /// <summary>The verb <c>lock</c>.</summary>
    public static Command Lock(CommandRunner runner)
    {
        var command = new Command("lock", "Lock the protocol: its text and hash go on record; from then on it is changed by 'amend' alone.");
        runner.BindWriting(command, (_, context, study) =>
        {
            if (study.Setup.History.Current is { } locked)
            {
                return CommandResult.Failed(ExitCode.Refused, "protocol-locked", study.Setup.Folder.ProtocolFile,
                    FormattableString.Invariant($"version {locked.Number} was locked on {locked.At:uuuu-MM-dd}"), "a protocol that is not locked", "Change it with 'swingstudy protocol amend --reason TEXT --known TEXT'.");
            }

            var version = ProtocolVersions.Store(study, context, null, null);
            var warnings = ProtocolCheck.Review(study.Setup.Protocol, study.Setup.Dictionary).Warnings;
            context.Log.Information("Protocol locked with hash {Hash}", version.Hash.ToString());
            return CommandResult.Done(Document(version, warnings.Select(ProblemDocument.From)), console =>
            {
                console.MarkupLineInterpolated($"Protocol {study.Setup.Protocol.Name} {version.Version} is locked with the hash {version.Hash.Short}.");
                if (version.IsAfterData)
                    console.MarkupLineInterpolated($"Data that could show an effect had been taken before: {string.Join("; ", version.Taken.Where(data => data.TellsOfEffects))}. Findings say so.");
                ProblemLines.Write(console, warnings);
                if (study.Setup.Protocol.Randomization is not null)
                    console.WriteLine("Next: 'swingstudy protocol schedule' draws who starts when, before data are taken.");
            });
        });
        return command;
    }

    /// <summary>The verb <c>amend</c>.</summary>
    public static Command Amend(CommandRunner runner)
    {
        var file = new Argument<string?>("file") { Description = "The amended protocol (default: the study's protocol.yaml as it was edited).", Arity = ArgumentArity.ZeroOrOne };
        var reason = new Option<string?>("--reason") { Description = "Why; stands in the ledger. No names.", HelpName = "TEXT" };
        var known = new Option<string?>("--known") { Description = "What was already known of the results; the numbers of sessions and swings by phase are added.", HelpName = "TEXT" };
        var command = new Command("amend", "Make an edited protocol the next version, with the reason and what was already known.") { file, reason, known };
        runner.BindAmending(command, (parsed, context, study) =>
        {
            if (Refusal(study, parsed.GetValue(reason), parsed.GetValue(known)) is { } refused)
                return refused;
            if (parsed.GetValue(file) is { } named && study.TakeProtocol(named) is { Count: > 0 } problems)
                return CommandResult.Failed(ExitCode.InvalidInput, problems);
            return Amend(study, context, parsed.GetValue(reason)!, parsed.GetValue(known)!);
        });
        return command;
    }

    /// <summary>The verb <c>restore</c>.</summary>
    public static Command Restore(CommandRunner runner)
    {
        var command = new Command("restore", "Put the locked text of the protocol back; the edited file is kept beside it.");
        runner.Bind(command, (_, context) =>
        {
            if (!WriterLock.Take(context.Folder).Succeeded(out var writerLock, out var problems))
                return CommandResult.Failed(ExitCode.Refused, problems);
            using (writerLock)
            using (var registry = new StudyRegistry(context.Folder, context.Time))
            {
                if (registry.Protocol.History().Current is not { } locked)
                    return NotLocked(context.Folder.ProtocolFile);
                if (LockedProtocol.Edited(context.Folder, registry) is null)
                    return CommandResult.Done(new { restored = false, hash = locked.Hash.ToString() }, console => console.WriteLine("The protocol is as it was locked; nothing was done."));
                var kept = LockedProtocol.PutBack(context.Folder, registry, locked, context.Actor);
                return CommandResult.Done(
                    new { restored = true, hash = locked.Hash.ToString(), edited = kept },
                    console => console.MarkupLineInterpolated($"Version {locked.Number} of the protocol is back.{(kept is null ? "" : $" The edited file is {kept}.")}"));
            }
        });
        return command;
    }

    private static CommandResult Amend(OpenedStudy study, CommandContext context, string reason, string known)
    {
        var (locked, protocol) = (study.Setup.History.Current!, study.Setup.Protocol);
        if (protocol.Hash == locked.Hash)
        {
            return CommandResult.Failed(ExitCode.Refused, "protocol-unchanged", study.Setup.Folder.ProtocolFile, "the protocol is as it was locked", "an edited protocol",
                "Edit protocol.yaml, or name the amended file.");
        }

        if (protocol.Version <= Version.Parse(locked.Version))
        {
            return CommandResult.Failed(ExitCode.InvalidInput, "version-not-raised", study.Setup.Folder.ProtocolFile, $"'version' is {protocol.Version}", $"a version above {locked.Version}",
                "Raise 'version', so that everybody who holds a copy knows which one it is.");
        }

        var version = ProtocolVersions.Store(study, context, reason, known);
        context.Log.Information("Protocol amended to version {Version} with hash {Hash}", version.Number, version.Hash.ToString());
        return CommandResult.Done(Document(version, []), console =>
        {
            console.MarkupLineInterpolated($"Amendment {version.Number - 1}: protocol {protocol.Name} {version.Version} with the hash {version.Hash.Short}.");
            console.MarkupLineInterpolated($"Taken before: {string.Join("; ", version.Taken)}.");
            if (version.IsAfterData)
                console.WriteLine("Comparisons that it adds or changes are told apart from those that were planned before data.");
        });
    }

    private static CommandResult? Refusal(OpenedStudy study, string? reason, string? known)
    {
        if (!study.Setup.History.IsLocked)
            return NotLocked(study.Setup.Folder.ProtocolFile);
        if (string.IsNullOrWhiteSpace(reason))
        {
            return CommandResult.Failed(ExitCode.Refused, "reason-missing", "--reason", "an amendment without a reason", "why the plan changes, in words",
                "Add --reason TEXT; it stands in the ledger.");
        }

        return string.IsNullOrWhiteSpace(known)
            ? CommandResult.Failed(ExitCode.Refused, "known-missing", "--known", "an amendment that does not say what was known", "what of the results was known to whoever decided",
                "Add --known TEXT, for instance --known \"Nobody had seen a result\".")
            : null;
    }

    internal static CommandResult NotLocked(string file) => CommandResult.Failed(ExitCode.Refused, "protocol-not-locked", file, "the protocol was never locked", "a locked protocol",
        "'swingstudy protocol lock' locks it, before the first swing of an intervention.");

    private static object Document(ProtocolVersion version, IEnumerable<ProblemDocument> warnings) => new
    {
        version = version.Number, declared = version.Version, hash = version.Hash.ToString(), at = version.At.ToString(), version.Actor, version.Reason, version.Known,
        taken = version.Taken.Select(data => new { data.Phase, data.Role, data.Sessions, data.Swings }), after_data = version.IsAfterData, warnings,
    };
}
