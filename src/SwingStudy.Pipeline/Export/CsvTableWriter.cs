using System.Globalization;
using NodaTime;
using NodaTime.Text;
using SwingStudy.Domain.Tables;

namespace SwingStudy.Pipeline.Export;

/// <summary>Writes rows as CSV by RFC 4180: UTF-8 without byte order mark, comma, LF, one heading row, the empty cell for missing values.</summary>
/// <remarks>
/// Numbers are written with the fewest digits that read back to the same number; moments as ISO 8601 in UTC; lists as JSON arrays. A text
/// that is empty is written as two quotes, so that it differs from a missing one for readers that look.
/// </remarks>
internal sealed class CsvTableWriter : IDisposable
{
    private static readonly InstantPattern Moment = InstantPattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm:ss.fff'Z'");
    private readonly StreamWriter _writer;
    private readonly TableDefinition _table;

    /// <summary>Creates the file and writes its heading row.</summary>
    public CsvTableWriter(string path, TableDefinition table)
    {
        _table = table;
        _writer = new StreamWriter(path, append: false, new System.Text.UTF8Encoding(encoderShouldEmitUTF8Identifier: false), 1 << 16) { NewLine = "\n" };
        _writer.WriteLine(string.Join(',', table.Columns.Select(column => column.Name)));
    }

    /// <summary>Appends rows.</summary>
    public void Append(RowSet rows)
    {
        for (var row = 0; row < rows.Count; row++)
        {
            for (var column = 0; column < _table.Columns.Count; column++)
            {
                if (column > 0)
                    _writer.Write(',');
                WriteCell(rows.Columns[column], row);
            }

            _writer.WriteLine();
        }
    }

    /// <inheritdoc/>
    public void Dispose() => _writer.Dispose();

    private void WriteCell(Column column, int row)
    {
        if (column.IsMissing(row))
            return;
        switch (column)
        {
            case TextColumn texts:
                WriteText(texts.Values[row]!);
                break;
            case NumberColumn numbers:
                _writer.Write(Number(numbers.Values[row]));
                break;
            case IntegerColumn integers:
                _writer.Write(integers.Values[row]!.Value.ToString(CultureInfo.InvariantCulture));
                break;
            case BooleanColumn booleans:
                _writer.Write(booleans.Values[row]!.Value ? "true" : "false");
                break;
            case InstantColumn instants:
                _writer.Write(Moment.Format(Instant.FromUnixTimeMilliseconds(instants.UnixMillis[row])));
                break;
            case NumberListColumn lists:
                WriteText($"[{string.Join(',', lists.Values[row]!.Select(value => double.IsNaN(value) ? "null" : Number(value)))}]");
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(column), column.Kind, "Unknown kind of column.");
        }
    }

    private void WriteText(string text)
    {
        if (text.Length > 0 && text.AsSpan().IndexOfAny(",\"\r\n") < 0 && text[0] != ' ' && text[^1] != ' ')
        {
            _writer.Write(text);
            return;
        }

        _writer.Write('"');
        _writer.Write(text.Replace("\"", "\"\"", StringComparison.Ordinal));
        _writer.Write('"');
    }

    private static string Number(double value) => value.ToString("R", CultureInfo.InvariantCulture);
}
