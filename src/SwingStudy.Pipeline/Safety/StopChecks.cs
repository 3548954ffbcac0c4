using System.Globalization;
using SwingStudy.Domain.Protocols;

namespace SwingStudy.Pipeline.Safety;

/// <summary>Holds sessions of one player against the stop rules of the protocol.</summary>
internal static class StopChecks
{
    private const int DaysOfWeek = 7;

    /// <summary>What stops a session: evidence, rule and detail of each finding. Nothing depends on the order in which data came.</summary>
    /// <param name="rules">The rules.</param>
    /// <param name="session">The session.</param>
    /// <param name="all">All sessions of the player.</param>
    public static IEnumerable<FoundStop> Find(IReadOnlyList<StopRule> rules, WatchedSession session, IReadOnlyList<WatchedSession> all) =>
        rules.SelectMany(rule => rule.Variable is null ? Counted(rule, session, all) : Valued(rule, session)).DistinctBy(stop => stop.Evidence);

    private static IEnumerable<FoundStop> Counted(StopRule rule, WatchedSession session, IReadOnlyList<WatchedSession> all)
    {
        if (rule.MostSwings is not { } most)
            yield break;
        var count = rule.Per == SwingSpan.Session
            ? session.Count(rule.Intent)
            : all.Where(other => other.Day <= session.Day && other.Day > session.Day.PlusDays(-DaysOfWeek)).Sum(other => other.Count(rule.Intent));
        if (count <= most)
            yield break;
        var span = rule.Per == SwingSpan.Session ? "session" : "week";
        var what = rule.Intent is null ? "swings" : $"swings at {rule.Intent} intent";
        yield return new FoundStop(
            string.Create(CultureInfo.InvariantCulture, $"swings {span} {rule.Intent} {most}"),
            string.Create(CultureInfo.InvariantCulture, $"at most {most} {what} a {span}: {rule.Why}"),
            string.Create(CultureInfo.InvariantCulture, $"{count} {what} in the {span}"));
    }

    private static IEnumerable<FoundStop> Valued(StopRule rule, WatchedSession session)
    {
        var recorded = session.Recorded.GetValueOrDefault(rule.Variable!) ?? [];
        var bySource = session.Swings.Where(swing => session.Fits(swing, rule.Intent) && swing.Values.ContainsKey(rule.Variable!)).GroupBy(swing => swing.Source).ToList();
        IReadOnlyList<WatchedValue>[] series = bySource.Count == 0
            ? [recorded]
            : [.. bySource.Select(source => (IReadOnlyList<WatchedValue>)[.. recorded.Concat(source.Select(swing => new WatchedValue(swing.At, swing.Values[rule.Variable!]))).OrderBy(value => value.At)])];
        foreach (var values in series.Where(values => values.Count > 0))
        {
            foreach (var stop in Limits(rule, values))
                yield return stop;
        }

        if (rule.FallPercent is null)
            yield break;
        foreach (var source in bySource)
        {
            if (Fall(rule, source.Key, [.. source.Where(swing => !swing.IsPractice).OrderBy(swing => swing.At).Select(swing => swing.Values[rule.Variable!])]) is { } fall)
                yield return fall;
        }
    }

    private static IEnumerable<FoundStop> Limits(StopRule rule, IReadOnlyList<WatchedValue> values)
    {
        var (highest, lowest) = (values.Max(value => value.Value), values.Min(value => value.Value));
        if (rule.AtLeast is { } limit && highest >= limit)
            yield return Stop(rule, "at least", limit, $"{rule.Variable} reached {Text(highest)}", highest);
        if (rule.AtMost is { } floor && lowest <= floor)
            yield return Stop(rule, "at most", floor, $"{rule.Variable} was {Text(lowest)}", lowest);
        if (rule.Rise is { } rise && highest - values[0].Value >= rise)
            yield return Stop(rule, "rise of", rise, $"{rule.Variable} rose from {Text(values[0].Value)} to {Text(highest)}", highest);
    }

    /// <summary>The mean of any run of the last swings against that of the first.</summary>
    private static FoundStop? Fall(StopRule rule, string source, double[] values)
    {
        var n = rule.OverSwings;
        if (values.Length < 2 * n)
            return null;
        var first = values.AsSpan(0, n).ToArray().Average();
        for (var from = n; from + n <= values.Length; from++)
        {
            var last = values.AsSpan(from, n).ToArray().Average();
            if (first > 0 && (first - last) / first * 100 >= rule.FallPercent)
            {
                return Stop(rule, string.Create(CultureInfo.InvariantCulture, $"fall over {n} swings, in per cent,"), rule.FallPercent.Value,
                    $"{rule.Variable} ({source}) fell from {Text(first)} to {Text(last)}", null);
            }
        }

        return null;
    }

    private static FoundStop Stop(StopRule rule, string how, double limit, string detail, double? worst) => new(
        $"{rule.Variable} {how} {Text(limit)}{(worst is { } value ? $": {Text(value)}" : "")}", $"{rule.Variable} {how} {Text(limit)}: {rule.Why}", detail);

    private static string Text(double value) => value.ToString("0.###", CultureInfo.InvariantCulture);
}
