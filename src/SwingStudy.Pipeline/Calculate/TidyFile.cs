using System.Globalization;
using DuckDB.NET.Data;
using SwingStudy.Domain.Problems;
using SwingStudy.Statistics.Catalogue;

namespace SwingStudy.Pipeline.Calculate;

/// <summary>Reads the columns that a statistic needs from any tidy CSV or Parquet file: one row an observation.</summary>
public static class TidyFile
{
    /// <summary>Reads a file whose name ends in <c>.csv</c> or <c>.parquet</c>.</summary>
    /// <param name="path">The file. CSV has one heading row, decimal points, and the empty cell or <c>NA</c> for missing values.</param>
    /// <param name="columns">Which column plays which part.</param>
    /// <returns>Rows whose named columns are all present, in file order with kept conditions sorted as asked; or every problem found.</returns>
    public static Outcome<TidyInput> Read(string path, TidyColumns columns)
    {
        if (!File.Exists(path))
            return new Problem("file-not-found", new Place(path), "no such file", "a CSV or Parquet file", "Check the path.");
        try
        {
            using var connection = new DuckDBConnection("DataSource=:memory:;autoinstall_known_extensions=false;autoload_known_extensions=false");
            connection.Open();
            var headings = Headings(connection, path);
            var absent = Named(columns).Where(name => !headings.Contains(name, StringComparer.OrdinalIgnoreCase)).ToList();
            return absent.Count > 0
                ? Outcome<TidyInput>.Failed([.. absent.Select(name => Absent(path, name, headings))])
                : Read(path, columns, Load(connection, path, Named(columns)));
        }
        catch (DuckDBException wrong)
        {
            return new Problem("file-unreadable", new Place(path), wrong.Message, "a tidy CSV or Parquet file", "Save the table as CSV with one heading row, or as Parquet.");
        }
    }

    private static Problem Absent(string path, string name, List<string> headings) =>
        new("column-not-in-file", new Place(path), $"no column '{name}'", $"one of: {string.Join(", ", headings)}",
            "Name the columns as the file's heading row does, with --value, --condition, --subject, --session, --predictor, --variance.");

    private static Outcome<TidyInput> Read(string path, TidyColumns columns, List<string?[]> rows)
    {
        var names = Named(columns);
        var problems = new List<Problem>();
        var numeric = names.Select((name, position) => (name, position))
            .Where(column => column.name == columns.Value || column.name == columns.Predictor || column.name == columns.Variance).ToList();
        var condition = columns.Condition is null ? -1 : names.IndexOf(columns.Condition);
        var kept = new List<(string?[] Texts, double[] Numbers, int Order)>();
        for (var row = 0; row < rows.Count; row++)
        {
            var texts = rows[row];
            var order = condition < 0 || columns.Keep.Count == 0 ? 0 : columns.Keep.ToList().IndexOf(texts[condition] ?? "");
            if (order < 0 || texts.Any(text => text is null or "" or "NA"))
                continue;
            var numbers = new double[names.Count];
            foreach (var (name, position) in numeric)
            {
                if (!double.TryParse(texts[position], NumberStyles.Float, CultureInfo.InvariantCulture, out numbers[position]) || !double.IsFinite(numbers[position]))
                {
                    problems.Add(new Problem("number-unreadable", new Place(path, row + 2, name), $"'{texts[position]}'", "a finite number with a decimal point",
                        "Mend the cell, or leave it empty when the value is missing."));
                }
            }

            kept.Add((texts, numbers, order));
        }

        if (problems.Count > 0)
            return Outcome<TidyInput>.Failed(problems);
        var sorted = kept.OrderBy(row => row.Order).ToList();
        return new TidyInput
        {
            Values = Numbers(columns.Value)!,
            Conditions = Texts(columns.Condition),
            Subjects = Texts(columns.Subject),
            Sessions = Texts(columns.Session),
            Predictors = Numbers(columns.Predictor),
            Variances = Numbers(columns.Variance),
        };

        string[]? Texts(string? name) => name is null ? null : [.. sorted.Select(row => row.Texts[names.IndexOf(name)]!)];
        double[]? Numbers(string? name) => name is null ? null : [.. sorted.Select(row => row.Numbers[names.IndexOf(name)])];
    }

    private static List<string> Named(TidyColumns columns) =>
        [.. new[] { columns.Value, columns.Condition, columns.Subject, columns.Session, columns.Predictor, columns.Variance }.OfType<string>().Distinct()];

    private static List<string> Headings(DuckDBConnection connection, string path)
    {
        using var command = connection.CreateCommand();
        command.CommandText = $"DESCRIBE SELECT * FROM {Source(path)}";
        using var reader = command.ExecuteReader();
        var headings = new List<string>();
        while (reader.Read())
            headings.Add(reader.GetString(0));
        return headings;
    }

    private static List<string?[]> Load(DuckDBConnection connection, string path, List<string> names)
    {
        using var command = connection.CreateCommand();
        var selected = string.Join(", ", names.Select(name => $"\"{name.Replace("\"", "\"\"", StringComparison.Ordinal)}\"::VARCHAR"));
        command.CommandText = $"SELECT {selected} FROM {Source(path)}";
        using var reader = command.ExecuteReader();
        var rows = new List<string?[]>();
        while (reader.Read())
        {
            var row = new string?[names.Count];
            for (var i = 0; i < row.Length; i++)
                row[i] = reader.IsDBNull(i) ? null : reader.GetString(i);
            rows.Add(row);
        }

        return rows;
    }

    private static string Source(string path)
    {
        var quoted = $"'{path.Replace("'", "''", StringComparison.Ordinal)}'";
        return path.EndsWith(".parquet", StringComparison.OrdinalIgnoreCase)
            ? $"read_parquet({quoted})"
            : $"read_csv({quoted}, header = true, all_varchar = true, delim = ',', quote = '\"', escape = '\"')";
    }
}
