using System.CommandLine;
using System.Globalization;
using System.Text.Json;
using Spectre.Console;
using SwingStudy.App.Terminal;
using SwingStudy.Domain.Tables;
using SwingStudy.Pipeline;
using SwingStudy.Pipeline.Audit;
using SwingStudy.Pipeline.Audit.Tracing;
using SwingStudy.Pipeline.Masking;

namespace SwingStudy.App.Commands;

/// <summary><c>audit verify|trace|log|prov</c>: for reviewers.</summary>
internal static class AuditCommand
{
    private static readonly JsonSerializerOptions Indented = new() { WriteIndented = true };

    public static Command Create(CommandRunner runner) => new("audit", "Prove that nothing was lost or changed, and follow any value to its raw text.")
    {
        Verify(runner),
        Trace(runner),
        Log(runner),
        Provenance(runner),
    };

    private static Command Verify(CommandRunner runner)
    {
        var recompute = new Option<bool>("--recompute") { Description = "Also compute every derived table again and compare it byte by byte." };
        var passphrase = Passphrase.File();
        var command = new Command("verify", "Recompute every hash, the ledger's chain, and the accounting of every file.") { recompute, passphrase };
        runner.BindReading(command, (parsed, context, study) =>
        {
            if (Passphrase.OpenIfGiven(study, parsed.GetValue(passphrase)) is { } wrong)
                return CommandResult.Failed(ExitCode.Refused, [wrong]);
            var checks = new List<AuditCheck>();
            using var work = parsed.GetValue(recompute) ? new WorkFolder() : null;
            var again = work is null ? [] : new Recomputation(study.Setup, study.Registry, Stages.All).Run(work.Path);
            foreach (var check in new StudyVerification(study.Setup, study.Registry, study.Originals).Run().Concat(again))
            {
                context.Log.Information("Verified {Check}: {Examined} examined, {Problems} problems", check.Name, check.Examined, check.Problems.Count);
                checks.Add(check);
            }

            var passed = checks.All(check => check.Passed);
            return new CommandResult(
                passed ? ExitCode.Done : ExitCode.NeedsPerson,
                new { passed, checks = checks.Select(check => new { check.Name, check.Passed, check.Examined, check.What, problems = check.Problems.Select(ProblemDocument.From), check.Remarks }) },
                console =>
                {
                    Listing.Write(console, ["", "what", "examined", "of what, and how"], checks.Select(check => (IReadOnlyList<string>)
                        [check.Passed ? "holds" : "BROKEN", check.Name, check.Examined.ToString(CultureInfo.InvariantCulture), check.What]), "Nothing was examined.");
                    foreach (var check in checks.Where(check => check.Problems.Count + check.Remarks.Count > 0))
                    {
                        console.MarkupLineInterpolated($"[bold]{check.Name}[/]");
                        ProblemLines.Write(console, check.Problems);
                        foreach (var remark in check.Remarks)
                            console.MarkupLineInterpolated($"  {remark}");
                    }

                    console.WriteLine(passed ? "Everything holds." : "Something does not hold.");
                });
        });
        return command;
    }

    private static Command Trace(CommandRunner runner)
    {
        var table = new Argument<string>("table") { Description = "Any table of the study, such as swings, effects or findings." };
        var key = new Argument<string>("key") { Description = "The row: the values of the table's key columns, joined by '/', such as P01/club_head_speed/with-cue/difference." };
        var column = new Argument<string?>("column") { Description = "A column of the table (default: what the row is about).", Arity = ArgumentArity.ZeroOrOne };
        var depth = new Option<int?>("--depth") { Description = "Steps back at the most (default: one for findings and what speaks of all players, else down to the raw text).", HelpName = "N" };
        depth.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<int?>() < 0)
                result.AddError("--depth is 0 or more.");
        });
        var passphrase = Passphrase.File();
        var command = new Command("trace", "From a cell of any table back to original file, row and raw text.") { table, key, column, depth, passphrase };
        runner.BindReading(command, (parsed, _, study) =>
        {
            if (Passphrase.OpenIfGiven(study, parsed.GetValue(passphrase)) is { } wrong)
                return CommandResult.Failed(ExitCode.Refused, [wrong]);
            var known = StudyTables.All(study.Setup.Dictionary).FirstOrDefault(definition => definition.Name == parsed.GetValue(table));
            if (study.Mask is not null && known is not null && !PhaseMask.CanShowOrigin(known, parsed.GetValue(column)))
                return ProtocolUnblindCommand.Blind("audit trace");
            var traced = new ValueTrace(study.Setup, study.Registry, study.Originals).Of(parsed.GetValue(table)!, parsed.GetValue(key)!, parsed.GetValue(column), parsed.GetValue(depth));
            if (study.Mask is { } mask && traced.Succeeded(out var found))
                traced = Masked(found, mask);
            return traced.Succeeded(out var node)
                ? CommandResult.Done(node, console => console.Write(Drawn(node)))
                : CommandResult.Failed(ExitCode.InvalidInput, traced.Problems);
        });
        return command;
    }

    private static TraceNode Masked(TraceNode node, PhaseMask mask) => node with
    {
        Value = node.Value is { } value ? mask.Text(value) : null,
        Note = node.Note is { } note ? mask.Text(note) : null,
        From = [.. node.From.Select(part => Masked(part, mask))],
        Origin = node.Origin is { } origin ? origin with { Raw = mask.Text(origin.Raw), Cell = origin.Cell is { } cell ? mask.Text(cell) : null } : null,
    };

    private static Tree Drawn(TraceNode node)
    {
        var tree = new Tree(Label(node));
        foreach (var part in node.From)
            tree.AddNode(Drawn(part));
        if (node.Origin is { } origin)
        {
            var place = tree.AddNode(new Text(string.Create(CultureInfo.InvariantCulture, $"{origin.File}, row {origin.Row} (original {origin.Original[..12]})")));
            if (origin.Heading is { } heading)
                place.AddNode(new Text($"column '{heading}': '{origin.Cell}'"));
            place.AddNode(new Text(origin.Absent ?? $"raw: {origin.Raw}"));
        }

        return tree;
    }

    private static Text Label(TraceNode node) => new(
        $"{node.Table} {node.Key}{(node.Column is { } column ? $" {column} = {node.Value ?? "missing"}" : "")}{(node.Note is { } note ? $"  ({note})" : "")}");

    private static Command Log(CommandRunner runner)
    {
        var command = new Command("log", "The ledger: every act, by whom and when.");
        runner.BindReading(command, (_, _, study) =>
        {
            var ledger = study.Registry.Ledger;
            string Masked(string details) => study.Mask?.Text(details) ?? details;
            var readable = ledger.Entries().ToDictionary(entry => entry.Number, entry => Masked(ledger.Readable(entry)));
            var entries = ledger.Entries().Select(entry => entry with { Details = Masked(entry.Details) }).ToList();
            return CommandResult.Done(
                new { entries = entries.Select(entry => new { entry.Number, at = entry.At.ToString(), entry.Actor, entry.Act, details = JsonSerializer.Deserialize<JsonElement>(entry.Details), readable = JsonSerializer.Deserialize<JsonElement>(readable[entry.Number]), entry.Previous, entry.Hash }) },
                console => Listing.Write(console, ["no", "when", "who", "act", "details"], entries.Select(entry => (IReadOnlyList<string>)
                    [entry.Number.ToString(CultureInfo.InvariantCulture), entry.At.ToString(), entry.Actor, entry.Act, readable[entry.Number]]), "The ledger is empty."));
        });
        return command;
    }

    private static Command Provenance(CommandRunner runner)
    {
        var to = new Option<string?>("--to") { Description = "File to write; without it the document goes to standard output.", HelpName = "FILE" };
        var command = new Command("prov", "The provenance of all table versions as W3C PROV-JSON.") { to };
        runner.BindReading(command, (parsed, _, study) =>
        {
            var version = typeof(AuditCommand).Assembly.GetName().Version?.ToString(3) ?? "";
            var document = new ProvenanceDocument(study.Setup, study.Registry, version).Build();
            if (parsed.GetValue(to) is not { } file)
                return CommandResult.Done(document, console => console.Profile.Out.Writer.WriteLine(document.ToJsonString(Indented)));
            File.WriteAllText(file, document.ToJsonString(Indented) + "\n");
            return CommandResult.Done(new { file }, console => console.MarkupLineInterpolated($"Wrote {file}."));
        });
        return command;
    }
}
