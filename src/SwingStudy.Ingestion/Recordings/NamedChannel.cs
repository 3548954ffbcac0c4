using System.Runtime.CompilerServices;
using SwingStudy.Domain.Curves;
using SwingStudy.Domain.Sources;

namespace SwingStudy.Ingestion.Recordings;

/// <summary>A channel or landmark coordinate that a mapping names.</summary>
/// <param name="Channel">Its name, in the device's axes.</param>
/// <param name="Unit">The canonical unit.</param>
/// <param name="Field">Where its samples stand.</param>
internal sealed record NamedChannel(string Channel, string Unit, FieldSource Field)
{
    private static readonly ConditionalWeakTable<SourceMapping, NamedChannel[]> Found = [];

    /// <summary>All that a mapping of recordings names, found once for all of its files.</summary>
    public static IReadOnlyList<NamedChannel> Of(SourceMapping mapping) => Found.GetValue(mapping, mapping => [.. In(mapping.Recording!)]);

    private static IEnumerable<NamedChannel> In(RecordingRule rule)
    {
        foreach (var (name, field) in rule.Channels)
            yield return new NamedChannel(name, Channels.FindInput(PlayerSides.Of(name, true))!.Unit, field);
        foreach (var (name, label) in rule.Landmarks)
        {
            foreach (var axis in (char[])['x', 'y', 'z'])
                yield return new NamedChannel($"{name}_{axis}", "m", new FieldSource { Column = ColumnOf(rule, label, axis), Unit = rule.LandmarkUnit });
        }
    }

    private static string ColumnOf(RecordingRule rule, string label, char axis) =>
        rule.LandmarkColumns.Replace("{label}", label, StringComparison.Ordinal).Replace("{axis}", axis.ToString(), StringComparison.Ordinal);
}
