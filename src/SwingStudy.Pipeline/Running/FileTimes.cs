using System.Text.Json;
using NodaTime.Text;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Pipeline.Running;

/// <summary>When the rows of a file were struck or recorded, by the statistics in the table's log.</summary>
/// <param name="First">Earliest, milliseconds since 1970 UTC.</param>
/// <param name="Last">Latest.</param>
/// <param name="HasGaps">Whether rows have no time.</param>
internal readonly record struct FileTimes(long First, long Last, bool HasGaps)
{
    private static readonly string[] Columns = ["struck_at", "recorded_at"];

    /// <summary>Reads the statistics; a file without them may hold any time.</summary>
    public static FileTimes Of(DataFile file)
    {
        using var document = JsonDocument.Parse(file.Statistics.Length == 0 ? "{}" : file.Statistics);
        var root = document.RootElement;
        List<long> first = [.. Columns.Select(column => Bound(root, "minValues", column)).OfType<long>()];
        List<long> last = [.. Columns.Select(column => Bound(root, "maxValues", column)).OfType<long>()];
        return first.Count == 0 || last.Count == 0
            ? new FileTimes(long.MinValue, long.MaxValue, true)
            : new FileTimes(first.Min(), last.Max(), Columns.All(column => HasGap(root, column)));
    }

    private static bool HasGap(JsonElement root, string column) =>
        !root.TryGetProperty("nullCount", out var gaps) || !gaps.TryGetProperty(column, out var count) || count.GetInt64() > 0;

    private static long? Bound(JsonElement root, string name, string column) =>
        root.TryGetProperty(name, out var bounds) && bounds.TryGetProperty(column, out var bound)
            ? InstantPattern.ExtendedIso.Parse(bound.GetString()!).Value.ToUnixTimeMilliseconds()
            : null;
}
