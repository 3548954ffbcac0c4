using System.Text.Json;
using NodaTime.Text;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Pipeline.Running;

/// <summary>When the swings of a file were struck, by the statistics in the table's log.</summary>
/// <param name="First">Earliest, milliseconds since 1970 UTC.</param>
/// <param name="Last">Latest.</param>
/// <param name="HasGaps">Whether rows have no time.</param>
internal readonly record struct FileTimes(long First, long Last, bool HasGaps)
{
    private const string Column = "struck_at";

    /// <summary>Reads the statistics; a file without them may hold any time.</summary>
    public static FileTimes Of(DataFile file)
    {
        using var document = JsonDocument.Parse(file.Statistics.Length == 0 ? "{}" : file.Statistics);
        var root = document.RootElement;
        return new FileTimes(
            Bound(root, "minValues") ?? long.MinValue,
            Bound(root, "maxValues") ?? long.MaxValue,
            !root.TryGetProperty("nullCount", out var gaps) || !gaps.TryGetProperty(Column, out var count) || count.GetInt64() > 0);
    }

    private static long? Bound(JsonElement root, string name) =>
        root.TryGetProperty(name, out var bounds) && bounds.TryGetProperty(Column, out var bound)
            ? InstantPattern.ExtendedIso.Parse(bound.GetString()!).Value.ToUnixTimeMilliseconds()
            : null;
}
