using System.CommandLine;
using Spectre.Console;
using SwingStudy.App.Studies;
using SwingStudy.App.Terminal;
using SwingStudy.Domain.Declarations;

namespace SwingStudy.App.Commands;

/// <summary><c>source check|suggest|try</c>.</summary>
internal static class SourceCommand
{
    public static Command Create(CommandRunner runner) => new("source", "The mappings of exports: check them, draft one, try one.")
    {
        Check(runner),
    };

    private static Command Check(CommandRunner runner)
    {
        var file = new Argument<string?>("file") { Description = "A mapping (default: all of the study).", Arity = ArgumentArity.ZeroOrOne };
        var command = new Command("check", "Read mappings and tell every problem with file and line.") { file };
        runner.Bind(command, (parsed, context) =>
        {
            if (!DeclarationPlaces.Dictionary(context.Folder, null).Succeeded(out var dictionary, out var problems))
                return CommandResult.Failed(ExitCode.InvalidInput, problems);
            if (parsed.GetValue(file) is { } path)
            {
                var one = MappingReader.Read(path, dictionary);
                return one.Succeeded(out var mapping) ? Fine([mapping.Source]) : CommandResult.Failed(ExitCode.InvalidInput, one.Problems);
            }

            var all = MappingReader.ReadAll(context.Folder.Sources, dictionary);
            return all.Succeeded(out var mappings)
                ? Fine([.. mappings.Select(mapping => mapping.Source)])
                : CommandResult.Failed(ExitCode.InvalidInput, all.Problems);
        });
        return command;
    }

    private static CommandResult Fine(IReadOnlyList<string> sources) => CommandResult.Done(
        new { sources },
        console => console.WriteLine(sources.Count == 0 ? "There are no mappings yet." : $"No problems in: {string.Join(", ", sources)}."));
}
