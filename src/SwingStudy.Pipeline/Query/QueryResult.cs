using System.Data.Common;

namespace SwingStudy.Pipeline.Query;

/// <summary>The rows of a query, streamed. Dispose after reading.</summary>
public sealed class QueryResult : IDisposable
{
    private readonly DbConnection _connection;
    private readonly DbCommand _command;
    private readonly DbDataReader _reader;

    internal QueryResult(DbConnection connection, DbCommand command, DbDataReader reader)
    {
        _connection = connection;
        _command = command;
        _reader = reader;
        Columns = [.. Enumerable.Range(0, reader.FieldCount).Select(reader.GetName)];
    }

    /// <summary>Names of the columns; they may repeat.</summary>
    public IReadOnlyList<string> Columns { get; }

    /// <summary>The rows, once; null where missing.</summary>
    public IEnumerable<object?[]> Rows()
    {
        while (_reader.Read())
        {
            var row = new object?[Columns.Count];
            for (var i = 0; i < row.Length; i++)
                row[i] = _reader.IsDBNull(i) ? null : _reader.GetValue(i);
            yield return row;
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _reader.Dispose();
        _command.Dispose();
        _connection.Dispose();
    }
}
