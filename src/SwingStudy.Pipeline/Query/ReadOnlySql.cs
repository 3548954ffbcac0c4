using System.Globalization;
using System.Text.Json;
using DuckDB.NET.Data;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Tables;

namespace SwingStudy.Pipeline.Query;

/// <summary>SQL over table versions, in this process, with nothing but reading allowed.</summary>
/// <remarks>
/// Three locks, each tested on its own: a statement must be a SELECT (told by the engine's own parser), external access is limited to the
/// Parquet files of the views, and the engine's configuration is locked before the statement runs.
/// </remarks>
public static class ReadOnlySql
{
    private const string Subject = "the query";

    /// <summary>Runs one SELECT over <paramref name="views"/>.</summary>
    /// <returns>The streamed result, or the problem with the statement.</returns>
    public static Outcome<QueryResult> Run(string sql, IReadOnlyList<QueryView> views)
    {
        var connection = new DuckDBConnection("DataSource=:memory:;autoinstall_known_extensions=false;autoload_known_extensions=false");
        DuckDBCommand? command = null;
        try
        {
            connection.Open();
            if (Refusal(connection, sql) is { } refusal)
            {
                connection.Dispose();
                return refusal;
            }

            Prepare(connection, views);
            command = connection.CreateCommand();
            command.CommandText = sql;
            command.UseStreamingMode = true;
            return new QueryResult(connection, command, command.ExecuteReader());
        }
        catch (DuckDBException wrong)
        {
            command?.Dispose();
            connection.Dispose();
            return new Problem("sql-invalid", new Place(Subject), wrong.Message, "one SELECT over the study's tables",
                $"The tables are {string.Join(", ", views.Select(view => view.Name))}; an older version of one is written \"swings@3\", in double quotes.");
        }
    }

    private static Problem? Refusal(DuckDBConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = $"SELECT json_serialize_sql({Literal(sql)})::VARCHAR";
        using var document = JsonDocument.Parse((string)command.ExecuteScalar()!);
        var root = document.RootElement;
        if (!root.GetProperty("error").GetBoolean())
        {
            return root.GetProperty("statements").GetArrayLength() == 1
                ? null
                : new Problem("sql-several-statements", new Place(Subject), "several statements", "one SELECT", "Run them one by one.");
        }

        var message = root.GetProperty("error_message").GetString() ?? "the statement cannot be read";
        return root.GetProperty("error_type").GetString() == "not implemented"
            ? new Problem("sql-read-only", new Place(Subject), "a statement that is no SELECT", "one SELECT",
                "Tables are never changed by SQL; use 'swingstudy export' for files and 'swingstudy decide' for decisions.")
            : new Problem("sql-invalid", new Place(Subject), message, "one SELECT", "Mend the statement.");
    }

    private static void Prepare(DuckDBConnection connection, IReadOnlyList<QueryView> views)
    {
        Execute(connection, "SET preserve_insertion_order = true");
        foreach (var view in views)
            Execute(connection, $"CREATE VIEW {Identifier(view.Name)} AS {Shown(view)}");
        Execute(connection, $"SET allowed_paths = [{string.Join(", ", views.SelectMany(view => view.Files).Distinct().Select(Literal))}]");
        Execute(connection, "SET enable_external_access = false");
        Execute(connection, "SET lock_configuration = true");
    }

    private static string Shown(QueryView view)
    {
        if (view.Replaced.Count == 0)
            return Definition(view);
        var replaced = string.Join(", ", view.Table.Columns.Where(column => view.Replaced.ContainsKey(column.Name))
            .Select(column => $"({view.Replaced[column.Name]})::{SqlType(column.Kind)} AS {Identifier(column.Name)}"));
        return $"SELECT * REPLACE ({replaced}) FROM ({Definition(view)})";
    }

    private static string Definition(QueryView view)
    {
        var columns = string.Join(", ", view.Table.Columns.Select(column => $"NULL::{SqlType(column.Kind)} AS {Identifier(column.Name)}"));
        var empty = $"SELECT {columns} WHERE false";
        if (view.Files.Count == 0)
            return empty;
        var files = string.Join(", ", view.Files.Select(Literal));
        var partition = view.Table.PartitionColumn is { } name
            ? $", hive_partitioning = true, hive_types = {{{Literal(name)}: VARCHAR}}"
            : ", hive_partitioning = false";
        return $"{empty} UNION ALL BY NAME SELECT * FROM read_parquet([{files}], union_by_name = true{partition})";
    }

    private static string SqlType(ColumnKind kind) => kind switch
    {
        ColumnKind.Text => "VARCHAR",
        ColumnKind.Number => "DOUBLE",
        ColumnKind.Integer => "BIGINT",
        ColumnKind.Boolean => "BOOLEAN",
        ColumnKind.Instant => "TIMESTAMP WITH TIME ZONE",
        ColumnKind.NumberList => "DOUBLE[]",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Unknown kind of column."),
    };

    private static void Execute(DuckDBConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }

    private static string Literal(string text) => $"'{text.Replace("'", "''", StringComparison.Ordinal)}'";

    private static string Identifier(string name) => string.Create(CultureInfo.InvariantCulture, $"\"{name.Replace("\"", "\"\"", StringComparison.Ordinal)}\"");
}
