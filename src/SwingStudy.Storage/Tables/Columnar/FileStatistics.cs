using System.Collections.Concurrent;
using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text.Json;
using NodaTime;
using NodaTime.Text;
using SwingStudy.Domain.Tables;
using SwingStudy.Storage.Tables.Log;

namespace SwingStudy.Storage.Tables.Columnar;

/// <summary>Bounds and gaps of a file's columns, collected row group by row group and written as Delta statistics.</summary>
internal sealed class FileStatistics(TableDefinition table)
{
    /// <summary>What the statistics of files in memory say of the columns that were asked for: intake asks the same files for each recording that comes.</summary>
    private static readonly ConditionalWeakTable<string, ConcurrentDictionary<string, ToldBounds>> Known = [];

    private readonly ColumnBounds[] _columns = [.. table.Columns.Select(_ => new ColumnBounds())];
    private long _rows;

    /// <summary>Rows so far.</summary>
    internal long Rows => _rows;

    /// <summary>Takes the bounds of one row group.</summary>
    internal void Add(EncodedGroup group)
    {
        _rows += group.Rows;
        for (var i = 0; i < _columns.Length; i++)
            _columns[i].Add(group.Bounds[i]);
    }

    /// <summary>The statistics as JSON text. The partition column stands beside them in the log and is left out.</summary>
    internal string Json() => LogJson.Text(json =>
    {
        json.WriteStartObject();
        json.WriteNumber("numRecords", _rows);
        json.WriteStartObject("minValues");
        Each((column, bounds) => WriteBound(json, column, bounds.Low, bounds.LowText));
        json.WriteEndObject();
        json.WriteStartObject("maxValues");
        Each((column, bounds) => WriteBound(json, column, bounds.High, bounds.HighText));
        json.WriteEndObject();
        json.WriteStartObject("nullCount");
        Each((column, bounds) => json.WriteNumber(column.Name, bounds.Missing));
        json.WriteEndObject();
        json.WriteEndObject();
    });

    /// <summary>Whether a file with these statistics can hold a row in the range. Without statistics it can.</summary>
    internal static bool MayHold(string statistics, RowRange range)
    {
        var (low, high, isMissing) = Known.GetOrCreateValue(statistics).GetOrAdd(range.Column, static (column, text) => Told(text, column), statistics);
        return !isMissing && !(low > range.High) && !(high < range.Low);
    }

    private static ToldBounds Told(string statistics, string column)
    {
        using var document = JsonDocument.Parse(statistics);
        var root = document.RootElement;
        return new ToldBounds(
            root.TryGetProperty("minValues", out var low) && low.TryGetProperty(column, out var lowest) ? Number(lowest) : null,
            root.TryGetProperty("maxValues", out var high) && high.TryGetProperty(column, out var highest) ? Number(highest) : null,
            root.TryGetProperty("nullCount", out var gaps) && gaps.TryGetProperty(column, out var missing)
                && missing.GetInt64() == root.GetProperty("numRecords").GetInt64());
    }

    private void Each(Action<ColumnDefinition, ColumnBounds> write)
    {
        for (var i = 0; i < _columns.Length; i++)
        {
            if (table.Columns[i].Name != table.PartitionColumn)
                write(table.Columns[i], _columns[i]);
        }
    }

    private static double Number(JsonElement bound) => bound.ValueKind == JsonValueKind.Number
        ? bound.GetDouble()
        : InstantPattern.ExtendedIso.Parse(bound.GetString()!).Value.ToUnixTimeMilliseconds();

    private static void WriteBound(Utf8JsonWriter json, ColumnDefinition column, object? bound, string? text)
    {
        switch (column.Kind, bound)
        {
            case (ColumnKind.Text, _) when text is not null:
                json.WriteString(column.Name, text);
                break;
            case (ColumnKind.Number, double number):
                json.WriteNumber(column.Name, number);
                break;
            case (ColumnKind.Integer, long number):
                json.WriteNumber(column.Name, number);
                break;
            case (ColumnKind.Instant, long millis):
                json.WriteString(column.Name, Instant.FromUnixTimeMilliseconds(millis).ToString("yyyy-MM-dd'T'HH:mm:ss.fff'Z'", CultureInfo.InvariantCulture));
                break;
        }
    }

    /// <summary>Bounds of one column; null where the statistics tell none.</summary>
    private readonly record struct ToldBounds(double? Low, double? High, bool IsMissing);
}
