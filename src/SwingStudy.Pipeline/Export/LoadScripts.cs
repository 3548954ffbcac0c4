using System.Text;
using SwingStudy.Domain.Tables;

namespace SwingStudy.Pipeline.Export;

/// <summary>Short programs that read an export in other languages with the right type for each column.</summary>
internal static class LoadScripts
{
    /// <summary>A script for R that needs base R alone.</summary>
    public static string ForR(IReadOnlyList<ExportedTable> tables)
    {
        var script = new StringBuilder("""
            # Reads the tables of this folder into one list. Needs base R alone; run it in this folder: source("load.R")
            moment <- function(text) as.POSIXct(text, format = "%Y-%m-%dT%H:%M:%OSZ", tz = "UTC")
            read_table <- function(file, classes, moments) {
              rows <- read.csv(file, colClasses = classes, na.strings = "", encoding = "UTF-8", check.names = FALSE)
              for (name in moments) rows[[name]] <- moment(rows[[name]])
              rows
            }
            tables <- list()

            """);
        foreach (var table in WithCsv(tables))
        {
            var classes = string.Join(", ", table.Table.Columns.Select(column => $"{column.Name} = \"{RClass(column.Kind)}\""));
            script.Append($"tables${table.Table.Name} <- read_table(\"{Csv(table)}\", c({classes}), {RVector(Moments(table.Table))})\n");
        }

        script.Append("for (name in names(tables)) cat(sprintf(\"%-14s %7d rows %4d columns\\n\", name, nrow(tables[[name]]), ncol(tables[[name]])))\n");
        return script.ToString();
    }

    /// <summary>A script for Python that needs pandas.</summary>
    public static string ForPython(IReadOnlyList<ExportedTable> tables)
    {
        var script = new StringBuilder("""
            # Reads the tables of this folder into one dictionary of data frames. Needs pandas; run it in this folder: python3 load.py
            import pandas as pd


            def read_table(file, types, moments):
                rows = pd.read_csv(file, dtype=types, keep_default_na=False, na_values=[""])
                for name in moments:
                    rows[name] = pd.to_datetime(rows[name], utc=True)
                return rows


            tables = {}

            """);
        foreach (var table in WithCsv(tables))
        {
            var types = string.Join(", ", table.Table.Columns.Where(column => column.Kind != ColumnKind.Instant)
                .Select(column => $"\"{column.Name}\": \"{PythonType(column.Kind)}\""));
            var moments = string.Join(", ", Moments(table.Table).Select(name => $"\"{name}\""));
            script.Append($"tables[\"{table.Table.Name}\"] = read_table(\"{Csv(table)}\", {{{types}}}, [{moments}])\n");
        }

        script.Append("""

            if __name__ == "__main__":
                for name, rows in tables.items():
                    print(f"{name:14s} {len(rows):7d} rows {len(rows.columns):4d} columns")

            """);
        return script.ToString();
    }

    private static IEnumerable<ExportedTable> WithCsv(IReadOnlyList<ExportedTable> tables) =>
        tables.Where(table => table.Files.Any(file => file.Format == "csv"));

    private static string Csv(ExportedTable table) => table.Files.First(file => file.Format == "csv").Path;

    private static IEnumerable<string> Moments(TableDefinition table) =>
        table.Columns.Where(column => column.Kind == ColumnKind.Instant).Select(column => column.Name);

    private static string RVector(IEnumerable<string> names) => $"c({string.Join(", ", names.Select(name => $"\"{name}\""))})";

    private static string RClass(ColumnKind kind) => kind switch
    {
        ColumnKind.Number => "numeric",
        ColumnKind.Integer => "integer",
        ColumnKind.Boolean => "logical",
        _ => "character",
    };

    private static string PythonType(ColumnKind kind) => kind switch
    {
        ColumnKind.Number => "float64",
        ColumnKind.Integer => "Int64",
        ColumnKind.Boolean => "boolean",
        _ => "string",
    };
}
