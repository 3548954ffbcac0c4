using SwingStudy.Domain.Tables;

namespace SwingStudy.Pipeline.Link;

/// <summary>What linking needs to know of one capture.</summary>
internal sealed record Capture(string Id, string Source, string Participant, long StruckMillis, string Original, long OriginalRow)
{
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
        var (ids, sources, participants) = (captures.Texts("capture_id"), captures.Texts("source"), captures.Texts("participant"));
        var struck = captures.Instants("struck_at");
        var (originals, rows) = (captures.Texts("original_sha256"), captures.Integers("original_row"));
        return Enumerable.Range(0, captures.Count)
            .Select(i => new Capture(
                ids[i]!, sources[i]!, participants[i] ?? "", struck[i], originals[i] ?? "", rows[i] ?? long.MaxValue))
            .OrderBy(capture => capture.StruckMillis)
            .ThenBy(capture => capture.Source, StringComparer.Ordinal)
            .ThenBy(capture => capture.Original, StringComparer.Ordinal)
            .ThenBy(capture => capture.OriginalRow)
            .ThenBy(capture => capture.Id, StringComparer.Ordinal);
    }
}
