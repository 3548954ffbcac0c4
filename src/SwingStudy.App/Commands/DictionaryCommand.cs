using System.CommandLine;
using System.Globalization;
using System.Text.Json;
using Spectre.Console;
using SwingStudy.App.Studies;
using SwingStudy.App.Terminal;
using SwingStudy.Domain.Codebooks;
using SwingStudy.Domain.Declarations;
using SwingStudy.Domain.Units;
using SwingStudy.Domain.Variables;

namespace SwingStudy.App.Commands;

/// <summary><c>dictionary check|show|diff|codebook</c>.</summary>
internal static class DictionaryCommand
{
    public static Command Create(CommandRunner runner) => new("dictionary", "The variables: check them, look one up, compare versions, write a codebook.")
    {
        Check(runner),
        Show(runner),
        Diff(runner),
        Codebook(runner),
    };

    private static Command Check(CommandRunner runner)
    {
        var folder = new Argument<string?>("dir") { Description = "Folder of a dictionary (default: the study's, else the shipped one).", Arity = ArgumentArity.ZeroOrOne };
        var command = new Command("check", "Read a dictionary and tell every problem with file and line.") { folder };
        runner.Bind(command, (parsed, context) =>
        {
            var read = DeclarationPlaces.Dictionary(context.Folder, parsed.GetValue(folder));
            return read.Succeeded(out var dictionary)
                ? CommandResult.Done(
                    new { dictionary.Name, Version = dictionary.Version.ToString(), Variables = dictionary.Variables.Count, Hash = dictionary.Hash.ToString() },
                    console => console.MarkupLineInterpolated($"Dictionary {dictionary.Name} {dictionary.Version.ToString()}: {Counted.Of(dictionary.Variables.Count, "variable")}, no problems."))
                : CommandResult.Failed(ExitCode.InvalidInput, read.Problems);
        });
        return command;
    }

    private static Command Show(CommandRunner runner)
    {
        var name = new Argument<string?>("variable") { Description = "A variable; without it, all are listed.", Arity = ArgumentArity.ZeroOrOne };
        var command = new Command("show", "Show one variable, or list all.") { name };
        runner.Bind(command, (parsed, context) =>
        {
            var read = DeclarationPlaces.Dictionary(context.Folder, null);
            if (!read.Succeeded(out var dictionary))
                return CommandResult.Failed(ExitCode.InvalidInput, read.Problems);
            if (parsed.GetValue(name) is not { } wanted)
                return List(dictionary);
            return dictionary.TryGet(wanted, out var variable)
                ? CommandResult.Done(variable, console => Write(console, variable))
                : CommandResult.Failed(ExitCode.InvalidInput, "variable-unknown", wanted, "no variable of that name", "a variable of the dictionary",
                    "'swingstudy dictionary show' lists them.");
        });
        return command;
    }

    private static Command Diff(CommandRunner runner)
    {
        var before = new Argument<string>("before") { Description = "Folder of the earlier dictionary." };
        var after = new Argument<string?>("after") { Description = "Folder of the later one (default: the study's, else the shipped one).", Arity = ArgumentArity.ZeroOrOne };
        var command = new Command("diff", "What changed between two dictionaries, and whether it breaks what was computed under the earlier one.") { before, after };
        runner.Bind(command, (parsed, context) =>
        {
            if (!DictionaryReader.Read(parsed.GetValue(before)!).Succeeded(out var earlier, out var problems)
                || !DeclarationPlaces.Dictionary(context.Folder, parsed.GetValue(after)).Succeeded(out var later, out problems))
                return CommandResult.Failed(ExitCode.InvalidInput, problems);
            var diff = DictionaryDiff.Between(earlier, later);
            return new CommandResult(
                diff.VersionFits ? ExitCode.Done : ExitCode.NeedsPerson,
                new { from = diff.From.ToString(), to = diff.To.ToString(), diff.Weight, diff.Breaks, least_version = diff.LeastVersion.ToString(), diff.VersionFits, diff.Changes },
                console =>
                {
                    foreach (var change in diff.Changes)
                        console.MarkupLineInterpolated($"{change.Weight.ToString().ToLowerInvariant(),-6} {change.ToString()}");
                    console.MarkupLineInterpolated($"{Counted.Of(diff.Changes.Count, "change")} from {diff.From.ToString()} to {diff.To.ToString()}{(diff.Breaks ? "; they break what was computed under the earlier one" : "")}.");
                    if (!diff.VersionFits)
                        console.MarkupLineInterpolated($"The version must be at least {diff.LeastVersion.ToString()}: correct it in dictionary.yaml.");
                });
        });
        return command;
    }

    private static Command Codebook(CommandRunner runner)
    {
        var format = new Option<string>("--format") { Description = "markdown, or table-schema (Frictionless Table Schema, JSON).", DefaultValueFactory = _ => "markdown" };
        format.AcceptOnlyFromAmong("markdown", "table-schema");
        var command = new Command("codebook", "The dictionary for people (Markdown) or programs (Table Schema), on standard output.") { format };
        runner.Bind(command, (parsed, context) =>
        {
            var read = DeclarationPlaces.Dictionary(context.Folder, null);
            if (!read.Succeeded(out var dictionary))
                return CommandResult.Failed(ExitCode.InvalidInput, read.Problems);
            var schema = TableSchemaCodebook.Write(dictionary);
            var text = parsed.GetValue(format) == "markdown" ? MarkdownCodebook.Write(dictionary) : schema;
            return CommandResult.Done(JsonSerializer.Deserialize<JsonElement>(schema), console => console.Profile.Out.Writer.Write(text));
        });
        return command;
    }

    private static CommandResult List(VariableDictionary dictionary) => CommandResult.Done(
        new { dictionary.Name, Version = dictionary.Version.ToString(), Variables = dictionary.Variables.Select(variable => new { variable.Name, variable.Title, variable.Unit, variable.Group }) },
        console => Listing.Write(console, ["variable", "title", "shown in", "group"],
            dictionary.Variables.Select(variable => (IReadOnlyList<string>)[variable.Name, variable.Title, Symbol(variable.ShownUnit) ?? "", variable.Group]), "The dictionary is empty."));

    private static void Write(IAnsiConsole console, Variable variable)
    {
        console.MarkupLineInterpolated($"[bold]{variable.Name}[/]  {variable.Title}");
        console.WriteLine(variable.Description);
        Listing.WriteFacts(
            console,
            ("unit", variable.Unit is null ? null : $"{variable.Unit}, shown in {Symbol(variable.ShownUnit) ?? "plain numbers"}"),
            ("sign", variable.Axis),
            ("possible", Range(variable.Minimum, variable.Maximum, variable.PossibleBasis)),
            ("typical", variable.Typical is { } typical ? Range(typical.Low, typical.High, $"{typical.Basis}{(typical.Note is { } note ? "; " + note : "")}") : null),
            ("words", variable.Words.Count > 0 ? string.Join(", ", variable.Words) : null),
            ("better", variable.Better == Better.None ? "no direction in itself" : variable.Better.ToString().ToLowerInvariant()),
            ("formula", variable.Formula),
            ("definition", variable.Definition),
            ("reference", variable.Reference),
            ("headings", variable.Synonyms.Count > 0 ? string.Join(", ", variable.Synonyms) : null));
    }

    /// <summary>Sign of a unit; null for plain numbers.</summary>
    private static string? Symbol(string? code) => code is not null && UnitCatalogue.ParseCode(code)?.Symbol is { Length: > 0 } symbol ? symbol : null;

    private static string? Range(double? low, double? high, string? basis) => low is null && high is null
        ? null
        : string.Create(CultureInfo.InvariantCulture, $"{low} to {high} ({basis})");
}
