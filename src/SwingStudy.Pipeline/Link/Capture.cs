using SwingStudy.Domain.Tables;

namespace SwingStudy.Pipeline.Link;

/// <summary>What linking needs to know of one capture.</summary>
/// <param name="Id">The capture.</param>
/// <param name="Source">Its source.</param>
/// <param name="Device">The very device; its captures share one clock.</param>
/// <param name="Participant">The player; null where the record names nobody.</param>
/// <param name="RecordedMillis">Device time of the first sample; <see cref="InstantColumn.MissingMillis"/> when unknown.</param>
/// <param name="StruckMillis">Device time of impact; <see cref="InstantColumn.MissingMillis"/> when the device does not tell.</param>
/// <param name="Purpose"><c>swing</c>, <c>zero</c> or <c>quiet</c>.</param>
/// <param name="Original">The original.</param>
/// <param name="OriginalRow">Row in it.</param>
internal sealed record Capture(
    string Id, string Source, string Device, string? Participant, long RecordedMillis, long StruckMillis, string Purpose, string Original, long OriginalRow)
{
    /// <summary>Purpose of a recording of a swing.</summary>
    public const string Swing = "swing";

    /// <summary>Whether the device tells the moment of impact.</summary>
    public bool HasStruck => StruckMillis != InstantColumn.MissingMillis;

    /// <summary>The time by which the capture is assigned to a session.</summary>
    public long AtMillis => HasStruck ? StruckMillis : RecordedMillis;

    /// <summary>The captures that no later revision replaces, and those that one does, each in order of time.</summary>
    public static (IReadOnlyList<Capture> Current, IReadOnlyList<Capture> Replaced) Read(RowSet captures)
    {
        var replaced = captures.Texts("revision_of").OfType<string>().ToHashSet(StringComparer.Ordinal);
        var all = InOrder(captures).ToLookup(capture => replaced.Contains(capture.Id));
        return ([.. all[false]], [.. all[true]]);
    }

    /// <summary>By time, then by file and row: what a device wrote first within one second comes first. Its own numbers may start again.</summary>
    private static IEnumerable<Capture> InOrder(RowSet captures)
    {
        var (ids, sources, devices, participants) = (captures.Texts("capture_id"), captures.Texts("source"), captures.Texts("device"), captures.Texts("participant"));
        var (struck, recorded, purposes) = (captures.Instants("struck_at"), captures.Instants("recorded_at"), captures.Texts("purpose"));
        var (originals, rows) = (captures.Texts("original_sha256"), captures.Integers("original_row"));
        return Enumerable.Range(0, captures.Count)
            .Select(i => new Capture(
                ids[i]!, sources[i]!, devices[i] ?? sources[i]!, participants[i], recorded[i], struck[i], purposes[i] ?? Swing, originals[i] ?? "",
                rows[i] ?? long.MaxValue))
            .OrderBy(capture => capture.AtMillis)
            .ThenBy(capture => capture.Source, StringComparer.Ordinal)
            .ThenBy(capture => capture.Original, StringComparer.Ordinal)
            .ThenBy(capture => capture.OriginalRow)
            .ThenBy(capture => capture.Id, StringComparer.Ordinal);
    }
}
