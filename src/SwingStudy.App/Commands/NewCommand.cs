using System.CommandLine;
using System.Text.Json;
using Spectre.Console;
using SwingStudy.App.Studies;
using SwingStudy.App.Terminal;
using SwingStudy.Domain.Studies;
using SwingStudy.Storage.Registry;

namespace SwingStudy.App.Commands;

/// <summary><c>new</c>: starts a study.</summary>
internal static class NewCommand
{
    public static Command Create(CommandRunner runner)
    {
        var folder = new Argument<string>("dir") { Description = "Folder of the new study." };
        var protocol = new Option<string>("--protocol") { Description = "A protocol file, or the name of one that ships with the program.", HelpName = "FILE", Required = true };
        var name = new Option<string?>("--name") { Description = "Name of the study (default: the folder's name)." };
        var zone = new Option<string>("--zone") { Description = "IANA zone in which the study's days are told.", DefaultValueFactory = _ => "UTC" };
        var command = new Command("new", "Start a study: folders, dictionary, protocol.") { folder, protocol, name, zone };
        runner.Bind(command, (parsed, context) =>
        {
            var study = new StudyFolder(Path.GetFullPath(parsed.GetValue(folder)!));
            var wanted = parsed.GetValue(protocol)!;
            if (ShippedDeclarations.FindProtocol(wanted) is not { } file)
            {
                return CommandResult.Failed(ExitCode.InvalidInput, "protocol-not-found", wanted, "neither a file nor a shipped protocol", "a protocol",
                    $"Shipped protocols: {string.Join(", ", ShippedDeclarations.Protocols)}.");
            }

            var created = StudyBuilder.Create(study, parsed.GetValue(name) ?? Path.GetFileName(study.Root), parsed.GetValue(zone)!, file);
            if (!created.Succeeded(out var setup))
                return CommandResult.Failed(ExitCode.InvalidInput, created.Problems);
            using (var registry = new StudyRegistry(study, context.Time))
            {
                registry.Act(context.Actor, "study.create", _ => JsonSerializer.Serialize(new
                {
                    name = setup.Declaration.Name, protocol = setup.Protocol.Hash.ToString(), dictionary = setup.Dictionary.Hash.ToString(),
                }));
            }

            context.Log.Information("Study {Study} created with protocol {Protocol} {Hash}", setup.Declaration.Name, setup.Protocol.Name, setup.Protocol.Hash.ToString());
            return CommandResult.Done(
                new { folder = study.Root, setup.Declaration.Name, Protocol = setup.Protocol.Name, Dictionary = setup.Dictionary.Version.ToString() },
                console =>
                {
                    console.MarkupLineInterpolated($"Study [bold]{setup.Declaration.Name}[/] stands in {study.Root}");
                    console.MarkupLineInterpolated($"Protocol {setup.Protocol.Name} {setup.Protocol.Version.ToString()}, dictionary {setup.Dictionary.Version.ToString()}");
                    console.WriteLine("Next: read protocol.yaml and make it yours; 'swingstudy protocol check' and 'swingstudy protocol plan' say what it can answer,");
                    console.WriteLine("      add the players with 'swingstudy people add P01 --alias NAME', then 'swingstudy protocol lock' and, where something is drawn,");
                    console.WriteLine("      'swingstudy protocol schedule', all before the first swing with the cue;");
                    console.WriteLine("      draft a mapping for each export with 'swingstudy source suggest FILE', save it in sources/, drop exports into inbox/SOURCE/,");
                    console.WriteLine("      then 'swingstudy ingest' and 'swingstudy run'.");
                });
        });
        return command;
    }
}
