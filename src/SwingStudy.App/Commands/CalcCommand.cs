using System.CommandLine;
using System.Globalization;
using Spectre.Console;
using SwingStudy.App.Terminal;
using SwingStudy.Pipeline.Calculate;
using SwingStudy.Statistics.Catalogue;
using SwingStudy.Statistics.Results;

namespace SwingStudy.App.Commands;

/// <summary><c>calc</c>: one statistic on any tidy file, for reviewers and teaching.</summary>
internal static class CalcCommand
{
    public static Command Create(CommandRunner runner)
    {
        var statistic = new Argument<string?>("statistic") { Description = "Method word, such as hedges-g-pooled; without it, all are listed.", Arity = ArgumentArity.ZeroOrOne };
        var file = new Argument<string?>("file") { Description = "A tidy CSV or Parquet file; without it, the statistic is explained.", Arity = ArgumentArity.ZeroOrOne };
        var value = Column("--value", "the observed numbers", "value");
        var condition = Column("--condition", "the condition of each row, such as the phase", null);
        var subject = Column("--subject", "the subject of each row", null);
        var session = Column("--session", "the session within subject", null);
        var predictor = Column("--predictor", "time or another predictor", null);
        var variance = Column("--variance", "the sampling variance of each value", null);
        var keep = new Option<string[]>("--keep") { Description = "Conditions to keep, the one 'before' first.", HelpName = "A B", AllowMultipleArgumentsPerToken = true };
        var confidence = new Option<double>("--confidence") { Description = "Confidence of intervals as a share.", DefaultValueFactory = _ => 0.95 };
        var seed = new Option<ulong>("--seed") { Description = "Seed of whatever is drawn by chance.", DefaultValueFactory = _ => 1UL };
        var settings = new Option<string[]>("--set") { Description = "A setting of the statistic, name=number.", HelpName = "NAME=NUMBER" };
        var command = new Command("calc", "Compute one statistic on any tidy file, or explain it.")
        {
            statistic, file, value, condition, subject, session, predictor, variance, keep, confidence, seed, settings,
        };
        runner.Bind(command, (parsed, _) =>
        {
            if (parsed.GetValue(statistic) is not { } name)
                return List();
            if (StatisticCatalogue.Find(name) is not { } definition)
                return Unknown(name);
            var texts = parsed.GetValue(settings) ?? [];
            var path = parsed.GetValue(file);
            if (path is null && (definition.Needs != InputColumns.None || texts.Length == 0))
                return Explain(definition);
            if (path is not null && definition.Needs == InputColumns.None)
                return CommandResult.Failed(ExitCode.WrongUsage, "file-not-needed", name, path, "settings alone", "Leave the file out and give the settings with --set.");
            if (!TryReadSettings(texts, out var numbers, out var wrong))
                return CommandResult.Failed(ExitCode.WrongUsage, "setting-unreadable", "--set", $"'{wrong}'", "name=number", "For instance: --set resamples=10000.");
            if (definition.FaultsOf(numbers) is { Count: > 0 } faults)
            {
                return CommandResult.Failed(ExitCode.WrongUsage, "setting-wrong", "--set", string.Join("; ", faults), "settings as the statistic explains them",
                    $"'swingstudy calc {name}' explains them.");
            }

            var share = parsed.GetValue(confidence);
            if (share is not (> 0 and < 1))
            {
                return CommandResult.Failed(ExitCode.WrongUsage, "confidence-out-of-range", "--confidence", share.ToString(CultureInfo.InvariantCulture),
                    "a share between 0 and 1", "For instance: --confidence 0.95.");
            }

            var input = new TidyInput { Values = [] };
            if (path is not null)
            {
                var read = TidyFile.Read(path, new TidyColumns(
                    parsed.GetValue(value)!, parsed.GetValue(condition), parsed.GetValue(subject), parsed.GetValue(session), parsed.GetValue(predictor),
                    parsed.GetValue(variance), parsed.GetValue(keep) ?? []));
                if (!read.Succeeded(out input!))
                    return CommandResult.Failed(ExitCode.InvalidInput, read.Problems);
            }

            var missing = definition.Needs & ~input.Columns;
            if (missing != InputColumns.None)
            {
                return CommandResult.Failed(ExitCode.WrongUsage, "column-not-named", name, $"no column named for: {missing}", $"columns for {definition.Needs}",
                    $"Name them with {string.Join(", ", missing.ToString().Split(", ").Select(part => $"--{part.ToLowerInvariant()} HEADING"))}.");
            }

            return Result(definition, definition.Results(input with { Confidence = share, Seed = parsed.GetValue(seed), Settings = numbers }), input.Values.Count);
        });
        return command;
    }

    private static Option<string?> Column(string name, string what, string? otherwise) => new(name)
    {
        Description = $"Heading of the column with {what}.",
        HelpName = "HEADING",
        DefaultValueFactory = _ => otherwise,
    };

    private static CommandResult List() => CommandResult.Done(
        new { statistics = StatisticCatalogue.All.Select(Describe) },
        console =>
        {
            foreach (var family in StatisticCatalogue.All.GroupBy(definition => definition.Family))
            {
                console.MarkupLineInterpolated($"[bold]{family.Key.ToString()}[/]");
                Listing.Write(console, ["name", "what it is"], family.Select(definition => (IReadOnlyList<string>)[definition.Name, definition.Title]), "");
            }

            console.WriteLine("'swingstudy calc NAME' explains one.");
        });

    private static CommandResult Explain(StatisticDefinition definition) => CommandResult.Done(Describe(definition), console =>
    {
        console.MarkupLineInterpolated($"[bold]{definition.Name}[/]  {definition.Title} ({definition.Symbol})");
        console.WriteLine(definition.What);
        Listing.WriteFacts(
            console,
            [
                ("needs", Needs(definition)),
                ("range", $"{Bound(definition.LowerBound)} to {Bound(definition.UpperBound)}; no effect is {definition.NullValue?.ToString(CultureInfo.InvariantCulture) ?? "not defined"}"),
                .. definition.Assumptions.Select(assumption => ("assumes", (string?)assumption)),
                .. definition.Settings.Select(setting => ("setting", setting.ToString())),
                .. definition.CitationKeys.Select(key => ("source", (string?)Citations.Get(key))),
            ]);
    });

    private static object Describe(StatisticDefinition definition) => new
    {
        definition.Name,
        definition.Title,
        definition.Symbol,
        Family = definition.Family.ToString(),
        definition.What,
        Needs = Needs(definition),
        LowerBound = Finite(definition.LowerBound),
        UpperBound = Finite(definition.UpperBound),
        definition.NullValue,
        definition.Assumptions,
        Settings = definition.Settings.Select(setting => setting.ToString()),
        Sources = definition.CitationKeys.Select(Citations.Get),
    };

    private static string Needs(StatisticDefinition definition) =>
        definition.Needs == InputColumns.None ? "no file, settings alone" : definition.Needs.ToString().ToLowerInvariant();

    private static CommandResult Result(StatisticDefinition definition, IReadOnlyList<NamedEstimate> results, int rows) => new(
        results[0].Estimate.IsDefined ? ExitCode.Done : ExitCode.NeedsPerson,
        new CalculatedStatistic(definition.Name, definition.Symbol, rows, results),
        console =>
        {
            console.MarkupLineInterpolated($"{definition.Title}{(definition.Needs == InputColumns.None ? "" : $", {Counted.Of(rows, "row")}")}");
            if (results.Count > 1)
                ShowTable(console, results);
            else
                ShowOne(console, definition, results[0].Estimate);
        });

    private static void ShowTable(IAnsiConsole console, IReadOnlyList<NamedEstimate> results)
    {
        Listing.Write(console, ["quantity", "estimate", "se", "ci low", "ci high", "p", "df", "note"], results.Select(row => (IReadOnlyList<string>)
        [
            row.Quantity, ShownOr(row.Estimate.Value), ShownOr(row.Estimate.StandardError), ShownOr(row.Estimate.Interval?.Low), ShownOr(row.Estimate.Interval?.High),
            ShownOr(row.Estimate.P), ShownOr(row.Estimate.DegreesOfFreedom), row.Estimate.Undefined is { } reason ? $"undefined: {reason}" : row.Note ?? "",
        ]), "No results.");
        if (results.Select(row => row.Estimate.Interval?.Level).FirstOrDefault(level => level is not null) is { } shared)
            console.MarkupLineInterpolated($"Intervals at {shared.ToString("P0", CultureInfo.InvariantCulture)}.");
    }

    private static void ShowOne(IAnsiConsole console, StatisticDefinition definition, Estimate estimate)
    {
        if (estimate.Value is not { } number)
        {
            console.MarkupLineInterpolated($"Undefined: {estimate.Undefined ?? ""}");
            return;
        }

        console.MarkupLineInterpolated($"{definition.Symbol} = [bold]{Shown(number)}[/]");
        if (estimate.StandardError is { } error)
            console.MarkupLineInterpolated($"standard error {Shown(error)}");
        if (estimate.Interval is { } interval)
            console.MarkupLineInterpolated($"{interval.Level.ToString("P0", CultureInfo.InvariantCulture)} interval {Shown(interval.Low)} to {Shown(interval.High)}");
        if (estimate.DegreesOfFreedom is { } degrees)
            console.MarkupLineInterpolated($"degrees of freedom {Shown(degrees)}");
        if (estimate.P is { } p)
            console.MarkupLineInterpolated($"p = {Shown(p)}");
    }

    private static CommandResult Unknown(string name) => CommandResult.Failed(ExitCode.WrongUsage, "statistic-unknown", name, "no statistic of that name",
        "a method word of the catalogue", "'swingstudy calc' lists them all.");

    private static bool TryReadSettings(string[] texts, out Dictionary<string, double> numbers, out string? wrong)
    {
        numbers = [];
        foreach (var text in texts)
        {
            var parts = text.Split('=', 2);
            if (parts.Length != 2 || !double.TryParse(parts[1], NumberStyles.Float, CultureInfo.InvariantCulture, out var number))
            {
                wrong = text;
                return false;
            }

            numbers[parts[0]] = number;
        }

        wrong = null;
        return true;
    }

    private static double? Finite(double? value) => value is { } number && double.IsFinite(number) ? number : null;

    private static string Bound(double bound) => double.IsFinite(bound) ? bound.ToString(CultureInfo.InvariantCulture) : bound < 0 ? "-∞" : "∞";

    private static string ShownOr(double? value) => value is { } number ? Shown(number) : "";

    private static string Shown(double value) => value.ToString("G7", CultureInfo.InvariantCulture);
}
