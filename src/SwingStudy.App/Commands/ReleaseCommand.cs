using System.CommandLine;
using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using Spectre.Console;
using SwingStudy.App.Studies;
using SwingStudy.App.Terminal;
using SwingStudy.Pipeline.Export;

namespace SwingStudy.App.Commands;

/// <summary><c>release</c>: freezes the newest table versions, dictionary and protocol under a name.</summary>
internal static partial class ReleaseCommand
{
    public static Command Create(CommandRunner runner)
    {
        var name = new Argument<string>("name") { Description = "Name of the release: letters, digits, dots and hyphens." };
        var command = new Command("release", "Freeze the newest versions of all tables under a name.") { name };
        runner.BindWriting(command, (parsed, context, study) =>
        {
            var wanted = parsed.GetValue(name)!;
            if (!Fitting().IsMatch(wanted))
                return CommandResult.Failed(ExitCode.WrongUsage, "release-name", wanted, "a name that does not fit a folder", "letters, digits, dots and hyphens", "For instance: 2026-autumn-1.");
            if (File.Exists(ReleaseFile.PathOf(study.Setup.Folder, wanted)))
                return CommandResult.Failed(ExitCode.Refused, "release-exists", wanted, "a release of that name exists", "a new name", "A release is never changed: choose another name.");
            var versions = new StudyExport(study.Setup, study.Registry).NewestVersions();
            var entry = study.Registry.Act(context.Actor, "release", _ => JsonSerializer.Serialize(new { name = wanted, tables = versions }));
            var release = new ReleaseFile
            {
                Name = wanted,
                Created = context.Time.GetUtcNow().ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", CultureInfo.InvariantCulture),
                Tables = versions,
                Dictionary = study.Setup.Dictionary.Version.ToString(),
                DictionaryHash = study.Setup.Dictionary.Hash.ToString(),
                ProtocolHash = study.Setup.Protocol.Hash.ToString(),
                LedgerHash = entry.Hash,
            };
            release.Write(study.Setup.Folder);
            return CommandResult.Done(release, console => console.MarkupLineInterpolated($"Release {wanted} holds {Counted.Of(versions.Count, "table")}; 'swingstudy export --release {wanted} --to DIR' writes it out."));
        });
        return command;
    }

    [GeneratedRegex(@"^[A-Za-z0-9][A-Za-z0-9.\-]{0,63}$")]
    private static partial Regex Fitting();
}
