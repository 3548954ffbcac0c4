using System.CommandLine;
using System.Globalization;
using SwingStudy.App.Studies;
using SwingStudy.App.Terminal;
using SwingStudy.Pipeline.Query;

namespace SwingStudy.App.Commands;

/// <summary><c>query</c>: read-only SQL over table versions.</summary>
internal static class QueryCommand
{
    private const int RowsShown = 1000;

    public static Command Create(CommandRunner runner)
    {
        var sql = new Argument<string>("sql") { Description = "One SELECT. Tables by name; an older version as \"swings@3\", in double quotes." };
        var command = new Command("query", "Read-only SQL over any table version.") { sql };
        runner.BindReading(command, (parsed, _, study) =>
        {
            var statement = parsed.GetValue(sql)!;
            var ran = ReadOnlySql.Run(statement, TableViews.For(study, statement));
            if (!ran.Succeeded(out var result))
                return CommandResult.Failed(ExitCode.InvalidInput, ran.Problems);
            using (result)
            {
                var rows = result.Rows().ToList();
                return CommandResult.Done(
                    new { result.Columns, rows },
                    console =>
                    {
                        Listing.Write(console, result.Columns, rows.Take(RowsShown).Select(row => (IReadOnlyList<string>)[.. row.Select(Shown)]), "No rows.");
                        if (rows.Count > RowsShown)
                            console.Write(new Spectre.Console.Text($"{rows.Count - RowsShown} more rows; use --json for all of them, or LIMIT.\n"));
                    });
            }
        });
        return command;
    }

    private static string Shown(object? value) => value switch
    {
        null => "",
        DateTime moment => moment.ToString("yyyy-MM-dd HH:mm:ss.fff", CultureInfo.InvariantCulture),
        double number => number.ToString("R", CultureInfo.InvariantCulture),
        IFormattable formattable => formattable.ToString(null, CultureInfo.InvariantCulture),
        System.Collections.IEnumerable list and not string => $"[{string.Join(", ", list.Cast<object?>().Select(Shown))}]",
        _ => value.ToString() ?? "",
    };
}
