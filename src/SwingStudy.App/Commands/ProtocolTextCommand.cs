using System.CommandLine;
using System.Globalization;
using System.Text;
using Spectre.Console;
using SwingStudy.App.Studies;
using SwingStudy.App.Terminal;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Storage.Registry;

namespace SwingStudy.App.Commands;

/// <summary><c>protocol history|diff</c>: the locked texts, and how they differ from each other and from the file.</summary>
internal static class ProtocolTextCommand
{
    /// <summary>The verb <c>history</c>.</summary>
    public static Command History(CommandRunner runner)
    {
        var text = new Option<int?>("--text") { Description = "Print the text of this version as it was locked.", HelpName = "N" };
        var command = new Command("history", "The versions of the protocol: hash, date, reason, what was known.") { text };
        runner.Bind(command, (parsed, context) => InRegistry(context, registry =>
        {
            var versions = registry.Protocol.History().Versions;
            if (parsed.GetValue(text) is { } number)
            {
                return versions.FirstOrDefault(version => version.Number == number) is { } wanted
                    ? CommandResult.Done(new { version = wanted.Number, hash = wanted.Hash.ToString(), wanted.Text }, console => console.Write(new Text(wanted.Text)))
                    : Unknown(number, versions.Count);
            }

            return CommandResult.Done(
                new
                {
                    versions = versions.Select(version => new
                    {
                        version.Number, declared = version.Version, hash = version.Hash.ToString(), at = version.At.ToString(), version.Actor, version.Reason, version.Known,
                        taken = version.Taken.Select(data => new { data.Phase, data.Role, data.Sessions, data.Swings }), after_data = version.IsAfterData,
                        comparisons = version.Comparisons,
                    }),
                },
                console => Listing.Write(console, ["no", "version", "hash", "when", "who", "reason", "known", "taken before"], versions.Select(version => (IReadOnlyList<string>)
                [
                    version.Number.ToString(CultureInfo.InvariantCulture), version.Version, version.Hash.Short, version.At.ToString(), version.Actor,
                    version.Reason ?? "locked", version.Known ?? "", string.Join("; ", version.Taken),
                ]), "The protocol was never locked: 'swingstudy protocol lock'."));
        }));
        return command;
    }

    /// <summary>The verb <c>diff</c>.</summary>
    public static Command Diff(CommandRunner runner)
    {
        var from = new Option<int?>("--from") { Description = "Version to compare with (default: the newest).", HelpName = "N" };
        var to = new Option<int?>("--to") { Description = "Version that is compared (default: protocol.yaml as it lies in the folder).", HelpName = "N" };
        var command = new Command("diff", "What differs between two versions of the protocol, or between the locked one and the file.") { from, to };
        runner.Bind(command, (parsed, context) => InRegistry(context, registry =>
        {
            var versions = registry.Protocol.History().Versions;
            if (versions.Count == 0)
                return ProtocolLockCommand.NotLocked(context.Folder.ProtocolFile);
            foreach (var number in new[] { parsed.GetValue(from), parsed.GetValue(to) }.OfType<int>().Where(number => versions.All(version => version.Number != number)))
                return Unknown(number, versions.Count);
            var first = versions.First(version => version.Number == (parsed.GetValue(from) ?? versions[^1].Number));
            var (name, text) = parsed.GetValue(to) is { } wanted
                ? (string.Create(CultureInfo.InvariantCulture, $"version {wanted}"), versions.First(version => version.Number == wanted).Text)
                : ("protocol.yaml", File.Exists(context.Folder.ProtocolFile) ? Encoding.UTF8.GetString(File.ReadAllBytes(context.Folder.ProtocolFile)) : "");
            return Shown(string.Create(CultureInfo.InvariantCulture, $"version {first.Number}"), name, TextDifference.Of(first.Text, text));
        }));
        return command;
    }

    private static CommandResult Shown(string from, string to, IReadOnlyList<DifferingLine> lines)
    {
        var changed = lines.Where(line => line.Change != LineChange.Kept).ToList();
        return CommandResult.Done(
            new { from, to, equal = changed.Count == 0, lines = changed.Select(line => new { change = Word.Of(line.Change), from_line = line.First, to_line = line.Second, line.Text }) },
            console =>
            {
                console.WriteLine(changed.Count == 0 ? $"{from} and {to} are equal." : $"- {from}   + {to}");
                foreach (var line in changed)
                    console.Write(new Text($"{(line.Change == LineChange.Removed ? '-' : '+')} {(line.First ?? line.Second)!.Value.ToString(CultureInfo.InvariantCulture),4}  {line.Text}\n"));
            });
    }

    /// <summary>Looks into the registry alone: the declarations may be anything.</summary>
    private static CommandResult InRegistry(CommandContext context, Func<StudyRegistry, CommandResult> show)
    {
        if (!File.Exists(context.Folder.Registry))
        {
            return CommandResult.Failed(ExitCode.InvalidInput, "study-not-found", context.Folder.Root, "no study stands here", "a study folder",
                "Name it with --study DIR, or start one with 'swingstudy new DIR --protocol FILE'.");
        }

        using var registry = new StudyRegistry(context.Folder, context.Time);
        return show(registry);
    }

    private static CommandResult Unknown(int number, int count) => CommandResult.Failed(ExitCode.InvalidInput, "version-unknown",
        number.ToString(CultureInfo.InvariantCulture), "no version of that number", "a version of the protocol", FormattableString.Invariant($"There are {count}; 'swingstudy protocol history' lists them."));
}
