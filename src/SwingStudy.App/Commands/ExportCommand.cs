using System.CommandLine;
using System.Globalization;
using NodaTime;
using Spectre.Console;
using SwingStudy.App.Studies;
using SwingStudy.App.Terminal;
using SwingStudy.Pipeline.Export;

namespace SwingStudy.App.Commands;

/// <summary><c>export</c>: tables for R, Python, Node, .NET.</summary>
internal static class ExportCommand
{
    public static Command Create(CommandRunner runner)
    {
        var to = new Option<string>("--to") { Description = "Folder to write; new or empty.", HelpName = "DIR", Required = true };
        var formats = new Option<string>("--format") { Description = "Formats, joined by commas.", DefaultValueFactory = _ => string.Join(',', ExportRequest.AllFormats) };
        var release = new Option<string?>("--release") { Description = "The table versions of a release (default: the newest).", HelpName = "NAME" };
        var command = new Command("export", "Write tables as CSV, Parquet and Arrow with a data package, a codebook and loading programs for R and Python.") { to, formats, release };
        runner.BindReading(command, (parsed, context, study) =>
        {
            var wanted = parsed.GetValue(formats)!.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
            if (wanted.Length == 0 || wanted.Except(ExportRequest.AllFormats).Any())
            {
                return CommandResult.Failed(ExitCode.WrongUsage, "format-unknown", "--format", $"'{parsed.GetValue(formats)}'", "formats joined by commas",
                    $"The formats are {string.Join(", ", ExportRequest.AllFormats)}.");
            }

            var export = new StudyExport(study.Setup, study.Registry);
            var versions = export.NewestVersions();
            if (parsed.GetValue(release) is { } name)
            {
                if (!ReleaseFile.Read(study.Setup.Folder, name).Succeeded(out var frozen, out var problems))
                    return CommandResult.Failed(ExitCode.InvalidInput, problems);
                if (frozen.Tables.Any(table => study.Tables.Existing(table.Key) is not { } there || there.OldestVersion > table.Value))
                {
                    return CommandResult.Failed(ExitCode.Refused, "release-gone", name, "table versions of this release are gone, because a person was erased", "a release made since",
                        "'swingstudy audit verify' lists what can no longer be reproduced; 'swingstudy release NAME' makes a new release.");
                }

                versions = frozen.Tables;
            }

            var request = new ExportRequest(Path.GetFullPath(parsed.GetValue(to)!), wanted, versions, study.Setup.Declaration.Name) { Mask = study.Mask };
            var done = export.Write(request, Instant.FromDateTimeOffset(context.Time.GetUtcNow()), table => context.Log.Debug("Exporting {Table}", table));
            return done.Succeeded(out var tables) ? Done(context, request, tables) : CommandResult.Failed(ExitCode.InvalidInput, done.Problems);
        });
        return command;
    }

    private static CommandResult Done(CommandContext context, ExportRequest request, IReadOnlyList<ExportedTable> tables)
    {
        context.Log.Information("Exported {Tables} tables", tables.Count);
        if (request.Mask is not null)
            context.Messages.WriteLine("The analyst of this study is blind: phases, contrasts and cues are codes, and effects have no direction.");
        return CommandResult.Done(
            new { folder = request.Folder, tables = tables.Select(table => new { table.Table.Name, table.Version, table.RowCount, files = table.Files.Select(file => file.Path) }) },
            console =>
            {
                Listing.Write(console, ["table", "version", "rows"], tables.Select(table => (IReadOnlyList<string>)
                    [table.Table.Name, table.Version?.ToString(CultureInfo.InvariantCulture) ?? "", table.RowCount.ToString(CultureInfo.InvariantCulture)]), "There are no tables.");
                console.MarkupLineInterpolated($"In {request.Folder}: datapackage.json describes all files, codebook.md the variables; load.R and load.py read the CSV files.");
            });
    }
}
