using SwingStudy.Domain.Tables;
using SwingStudy.Pipeline.Link;

namespace SwingStudy.Pipeline.Measure;

/// <summary>Finds the captures of each swing.</summary>
internal static class SwingAssembly
{
    /// <summary>The swings of a session in order of time.</summary>
    public static IReadOnlyList<MeasuredSwing> Of(RowSet captures, RowSet links, IReadOnlyList<string> preferredSources)
    {
        var (ids, sources) = (captures.Texts("capture_id"), captures.Texts("source"));
        var rowOf = Enumerable.Range(0, captures.Count).ToDictionary(row => ids[row]!, StringComparer.Ordinal);
        var (linked, swings, methods) = (links.Texts("capture_id"), links.Texts("swing_id"), links.Texts("method"));
        var bySwing = Enumerable.Range(0, links.Count).Where(i => swings[i] is not null).ToLookup(i => swings[i]!, StringComparer.Ordinal);
        var rank = preferredSources.Select((source, i) => (source, i)).DistinctBy(pair => pair.source).ToDictionary(pair => pair.source, pair => pair.i, StringComparer.Ordinal);
        var struck = links.Instants("struck_at");
        return [.. bySwing.Where(own => own.Any(link => methods[link] != LinkMethods.Window)).Select(own => new MeasuredSwing(
                own.Key,
                struck[own.First()],
                own.Where(link => methods[link] == LinkMethods.Skeleton).Select(link => (int?)rowOf[linked[link]!]).FirstOrDefault(),
                Ordered(own.Where(link => methods[link] != LinkMethods.Window)),
                Ordered(own.Where(link => methods[link] == LinkMethods.Window))))
            .OrderBy(swing => swing.StruckMillis).ThenBy(swing => swing.Id.Length).ThenBy(swing => swing.Id, StringComparer.Ordinal)];

        IReadOnlyList<int> Ordered(IEnumerable<int> own) =>
            [.. own.Select(link => rowOf[linked[link]!])
                .OrderBy(row => rank.GetValueOrDefault(sources[row]!, int.MaxValue))
                .ThenBy(row => sources[row], StringComparer.Ordinal)
                .ThenBy(row => ids[row], StringComparer.Ordinal)];
    }
}
