using System.CommandLine;
using Spectre.Console;
using SwingStudy.App.Studies;
using SwingStudy.App.Terminal;
using SwingStudy.Domain.Declarations;
using SwingStudy.Domain.Sources;
using SwingStudy.Domain.Units;
using SwingStudy.Ingestion.Intake;
using SwingStudy.Ingestion.Suggest;

namespace SwingStudy.App.Commands;

/// <summary><c>source check|suggest|try</c>.</summary>
internal static class SourceCommand
{
    private const double Sure = 0.7;

    public static Command Create(CommandRunner runner) => new("source", "The mappings of exports: check them, draft one, try one.")
    {
        Check(runner),
        Suggest(runner),
        Try(runner),
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

    private static Command Suggest(CommandRunner runner)
    {
        var file = new Argument<string>("file") { Description = "An export that no mapping reads yet." };
        var name = new Option<string?>("--source") { Description = "Name of the source (default: made from the file's name)." };
        var zone = new Option<string?>("--zone") { Description = "IANA zone of naive times (default: the study's)." };
        var to = new Option<string?>("--to") { Description = "Write the draft there instead of printing it.", HelpName = "FILE" };
        var command = new Command("suggest", "Draft a mapping for a file never seen, each line with how sure it is and why.") { file, name, zone, to };
        runner.Bind(command, (parsed, context) =>
        {
            if (!DeclarationPlaces.Dictionary(context.Folder, null).Succeeded(out var dictionary, out var problems))
                return CommandResult.Failed(ExitCode.InvalidInput, problems);
            var studyZone = File.Exists(context.Folder.StudyFile) && StudyReader.Read(context.Folder.StudyFile).Succeeded(out var study) ? study.Zone : null;
            var drafted = SourceSuggester.Suggest(parsed.GetValue(file)!, dictionary, parsed.GetValue(name), parsed.GetValue(zone) ?? studyZone);
            if (!drafted.Succeeded(out var draft))
                return CommandResult.Failed(ExitCode.InvalidInput, drafted.Problems);
            if (parsed.GetValue(to) is { } target)
            {
                if (File.Exists(target))
                    return CommandResult.Failed(ExitCode.Refused, "file-exists", target, "a file stands there", "a new file", "A mapping is never overwritten; choose another name.");
                File.WriteAllText(target, draft.Yaml);
            }

            return CommandResult.Done(
                new { draft.Mapping.Source, draft.Yaml, draft.Lines, notices = draft.Notices.Select(ProblemDocument.From) },
                console =>
                {
                    if (parsed.GetValue(to) is { } written)
                        console.MarkupLineInterpolated($"Draft: {written}. Look at each line, then 'swingstudy source try {parsed.GetValue(file) ?? ""}'.");
                    else
                        console.Profile.Out.Writer.Write(draft.Yaml);
                    foreach (var line in draft.Lines.Where(line => line.Confidence < Sure))
                        console.Profile.Out.Writer.WriteLine(FormattableString.Invariant($"# unsure ({line.Confidence:0.00}) {line.Key}: {line.Text} - {line.Reason}"));
                });
        });
        return command;
    }

    private static Command Try(CommandRunner runner)
    {
        var file = new Argument<string>("file") { Description = "An export." };
        var mapping = new Option<string?>("--mapping") { Description = "The mapping to try (default: those of the study).", HelpName = "FILE" };
        var rows = new Option<int>("--rows") { Description = "Rows to show.", DefaultValueFactory = _ => 5 };
        var command = new Command("try", "Read a file as an intake would, show what would happen, and store nothing.") { file, mapping, rows };
        runner.Bind(command, (parsed, context) =>
        {
            if (!DeclarationPlaces.Dictionary(context.Folder, null).Succeeded(out var dictionary, out var problems))
                return CommandResult.Failed(ExitCode.InvalidInput, problems);
            IReadOnlyList<SourceMapping> mappings;
            if (parsed.GetValue(mapping) is { } one)
            {
                if (!MappingReader.Read(one, dictionary).Succeeded(out var single, out problems))
                    return CommandResult.Failed(ExitCode.InvalidInput, problems);
                mappings = [single];
            }
            else if (!MappingReader.ReadAll(context.Folder.Sources, dictionary).Succeeded(out mappings!, out problems))
            {
                return CommandResult.Failed(ExitCode.InvalidInput, problems);
            }

            var trial = SourceTrials.TrySource(parsed.GetValue(file)!, mappings, dictionary, parsed.GetValue(rows));
            return new CommandResult(
                trial.Problems.Count > 0 ? ExitCode.NeedsPerson : ExitCode.Done,
                new
                {
                    trial.File, trial.Source, trial.Encoding, trial.Delimiter, decimal_mark = trial.Decimal, trial.Preamble, trial.Headings, trial.RowsAsRead, trial.MappedColumns,
                    trial.RowsAsMapped, trial.Counts, trial.Rejects, trial.RejectCount,
                    problems = trial.Problems.Select(ProblemDocument.From), remarks = trial.Remarks.Select(ProblemDocument.From),
                },
                console => Write(console, trial));
        });
        return command;
    }

    private static void Write(IAnsiConsole console, SourceTrial trial)
    {
        console.MarkupLineInterpolated($"{trial.File}: source {trial.Source ?? "none"}, {trial.Encoding ?? "no encoding"}, cells between '{trial.Delimiter?.ToString() ?? "none"}', decimal '{trial.Decimal?.ToString() ?? "none"}'");
        foreach (var line in trial.Preamble)
            console.MarkupLineInterpolated($"preamble: {line}");
        console.WriteLine("As the file has it:");
        Listing.Write(console, trial.Headings, trial.RowsAsRead, "No rows were read.");
        console.WriteLine("As it would be stored:");
        Listing.Write(console, [.. trial.MappedColumns.Select(Shown)], trial.RowsAsMapped.Select(row => (IReadOnlyList<string>)[.. row.Select(cell => cell ?? "")]), "No rows would be stored.");
        console.MarkupLineInterpolated($"{trial.Counts.Read} read = {trial.Counts.Taken} taken + {trial.Counts.Rejected} rejected + {trial.Counts.NotDataTotal} not data; {Counted.Of(trial.RejectCount, "row or cell", "rows and cells")} set aside");
        foreach (var reject in trial.Rejects)
            console.MarkupLineInterpolated($"set aside: line {reject.Line}{(reject.Column is { } column ? $", column '{column}'" : "")}: '{reject.Raw}' ({reject.Reason}); expected {reject.Expected}");
        ProblemLines.Write(console, trial.Problems);
        ProblemLines.Write(console, trial.Remarks);
    }

    /// <summary>A column with the sign of its unit, "spin_rate [rpm]", where the document has the unit's code.</summary>
    private static string Shown(string column)
    {
        var start = column.IndexOf(" [", StringComparison.Ordinal);
        return start > 0 && column.EndsWith(']') && UnitCatalogue.ParseCode(column[(start + 2)..^1]) is { } unit
            ? unit.Symbol.Length == 0 ? column[..start] : $"{column[..start]} [{unit.Symbol}]"
            : column;
    }

    private static CommandResult Fine(IReadOnlyList<string> sources) => CommandResult.Done(
        new { sources },
        console => console.WriteLine(sources.Count == 0 ? "There are no mappings yet." : $"No problems in: {string.Join(", ", sources)}."));
}
