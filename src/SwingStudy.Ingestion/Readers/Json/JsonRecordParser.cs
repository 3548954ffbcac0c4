using System.Globalization;
using System.Text;
using System.Text.Json;

namespace SwingStudy.Ingestion.Readers.Json;

/// <summary>Flattens one JSON object to cells: nested keys become dotted headings, numbers keep their text.</summary>
internal sealed class JsonRecordParser(JsonColumns columns, bool mayAddColumns)
{
    private readonly JsonReaderOptions _options = new() { MaxDepth = ReaderLimits.JsonDepth };
    private readonly List<JsonCell> _cells = [];
    private readonly List<JsonKey> _levels = [];
    private readonly HashSet<int> _seen = [];
    private char[] _text = new char[256];
    private char[] _name = new char[64];
    private int _length;

    /// <summary>Cells of the last record, in its order.</summary>
    public IReadOnlyList<JsonCell> Cells => _cells;

    /// <summary>Text of a cell of the last record.</summary>
    public ReadOnlySpan<char> TextOf(JsonCell cell) => _text.AsSpan(cell.Start, cell.Length);

    /// <summary>Parses one record.</summary>
    /// <param name="record">The record.</param>
    /// <param name="around">Values of the objects around it, as an object; null for none.</param>
    /// <returns>Null, or what is wrong with it.</returns>
    public JsonFault? Parse(ReadOnlySpan<byte> record, byte[]? around = null)
    {
        _cells.Clear();
        _seen.Clear();
        _length = 0;
        return Object(record) ?? (around is null ? null : Object(around));
    }

    private JsonFault? Object(ReadOnlySpan<byte> record)
    {
        _levels.Clear();
        var reader = new Utf8JsonReader(record, _options);
        try
        {
            if (!reader.Read() || reader.TokenType != JsonTokenType.StartObject)
                return new JsonFault("json-no-object", "a value that is no object", "an object with one value a key");
            var fault = Members(ref reader, record);
            return fault is null && reader.Read() ? new JsonFault("json-malformed", "text behind the object", "one object") : fault;
        }
        catch (JsonException e)
        {
            return new JsonFault("json-malformed", e.Message.Split(" LineNumber", 2)[0].TrimEnd('.'), $"one JSON object, nested at most {ReaderLimits.JsonDepth} deep");
        }
        catch (InvalidOperationException e)
        {
            // A string with half a surrogate pair: well-formed JSON, and no text.
            return new JsonFault("json-malformed", e.Message.TrimEnd('.'), "text in its strings");
        }
    }

    private JsonFault? Members(ref Utf8JsonReader reader, ReadOnlySpan<byte> record)
    {
        var level = columns.Root;
        while (reader.Read())
        {
            if (reader.TokenType == JsonTokenType.EndObject)
            {
                if (_levels.Count == 0)
                    return null;
                level = _levels[^1];
                _levels.RemoveAt(_levels.Count - 1);
                continue;
            }

            if (_name.Length < reader.ValueSpan.Length)
                _name = new char[reader.ValueSpan.Length * 2];
            var key = level.Child(_name.AsSpan(0, reader.CopyString(_name)));
            reader.Read();
            if (reader.TokenType == JsonTokenType.StartObject)
            {
                _levels.Add(level);
                level = key;
                continue;
            }

            if (Value(ref reader, key, record) is { } fault)
                return fault;
        }

        return null;
    }

    private JsonFault? Value(ref Utf8JsonReader reader, JsonKey key, ReadOnlySpan<byte> record)
    {
        var start = _length;
        var (kind, number) = (CellKind.Empty, double.NaN);
        switch (reader.TokenType)
        {
            case JsonTokenType.String:
                kind = CellKind.Text;
                Reserve(reader.ValueSpan.Length);
                _length += reader.CopyString(_text.AsSpan(_length));
                break;
            case JsonTokenType.Number:
                kind = CellKind.Number;
                Append(reader.ValueSpan);
                number = double.Parse(_text.AsSpan(start, _length - start), NumberStyles.Float, CultureInfo.InvariantCulture);
                break;
            case JsonTokenType.True or JsonTokenType.False:
                kind = CellKind.Boolean;
                Append(reader.ValueSpan);
                break;
            case JsonTokenType.StartArray:
                kind = CellKind.Error;
                var from = (int)reader.TokenStartIndex;
                reader.Skip();
                Append(record[from..(int)reader.BytesConsumed]);
                break;
        }

        var column = columns.ColumnOf(key, mayAddColumns);
        if (column < 0)
            return new JsonFault("too-many-columns", $"the key '{key.Path}' beyond {ReaderLimits.Columns} others", "the same keys in all records");
        if (!_seen.Add(column))
            return new JsonFault("json-key-twice", $"the key '{key.Path}' twice", "each key once");
        _cells.Add(new JsonCell(column, kind, start, _length - start, number));
        return null;
    }

    private void Append(ReadOnlySpan<byte> utf8)
    {
        Reserve(utf8.Length);
        _length += Encoding.UTF8.GetChars(utf8, _text.AsSpan(_length));
    }

    private void Reserve(int characters)
    {
        if (_length + characters > _text.Length)
            Array.Resize(ref _text, Math.Max(_text.Length * 2, _length + characters));
    }
}
