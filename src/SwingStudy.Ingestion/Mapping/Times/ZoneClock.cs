using NodaTime;
using NodaTime.TimeZones;

namespace SwingStudy.Ingestion.Mapping.Times;

/// <summary>Turns the local times of one device's file, in file order, into UTC.</summary>
/// <remarks>
/// Times that clocks skipped are named, not moved. Times that occur twice are decided only by evidence: rows in order whose clock steps back once
/// passed from summer to winter time at that step. Without it a person decides, else the file is held.
/// </remarks>
internal sealed class ZoneClock(DateTimeZone zone)
{
    private const long MillisPerDay = 86_400_000;

    // Within these local limits the offset is the same for sure: a day off the transitions at both ends.
    private long _safeFrom = long.MaxValue;
    private long _safeUpTo = long.MinValue;
    private long _safeOffset;

    /// <summary>Replaces each local time in <paramref name="millis"/> by UTC; skipped and undecided ones keep their local value.</summary>
    /// <param name="millis">Milliseconds since 1970 local, in file order.</param>
    /// <param name="sequence">Numbers of the device beside them; <see cref="long.MinValue"/> where there is none; empty when no row has one.</param>
    /// <param name="choice">A person's decision for times that occur twice, or null.</param>
    public ResolvedTimes Resolve(Span<long> millis, ReadOnlySpan<long> sequence, AmbiguousChoice? choice)
    {
        List<int> skipped = [];
        List<int> ambiguous = [];
        for (var i = 0; i < millis.Length; i++)
        {
            var local = millis[i];
            if (local > _safeFrom && local < _safeUpTo)
            {
                millis[i] = local - _safeOffset;
                continue;
            }

            var mapped = zone.MapLocal(LocalOf(local));
            if (mapped.Count == 1)
            {
                Remember(mapped.EarlyInterval);
                millis[i] = local - mapped.EarlyInterval.WallOffset.Milliseconds;
            }
            else
            {
                (mapped.Count == 0 ? skipped : ambiguous).Add(i);
            }
        }

        return new ResolvedTimes(skipped, ambiguous.Count == 0 ? [] : Decide(millis, sequence, ambiguous, choice));
    }

    private static LocalDateTime LocalOf(long millis) => Instant.FromUnixTimeMilliseconds(millis).InUtc().LocalDateTime;

    private List<AmbiguousRun> Decide(Span<long> millis, ReadOnlySpan<long> sequence, List<int> ambiguous, AmbiguousChoice? choice)
    {
        var runs = new List<AmbiguousRun>();
        for (var from = 0; from < ambiguous.Count;)
        {
            var upTo = from + 1;
            while (upTo < ambiguous.Count && SameTransition(millis[ambiguous[upTo - 1]], millis[ambiguous[upTo]]))
                upTo++;
            var rows = ambiguous[from..upTo];
            var run = DecideRun(millis, sequence, rows, choice);
            if (run.Decision != AmbiguousDecision.Open)
            {
                foreach (var row in rows)
                {
                    var mapped = zone.MapLocal(LocalOf(millis[row]));
                    var later = run.FirstLater is { } first ? row >= first : choice == AmbiguousChoice.Later;
                    millis[row] -= (later ? mapped.LateInterval : mapped.EarlyInterval).WallOffset.Milliseconds;
                }
            }

            runs.Add(run);
            from = upTo;
        }

        return runs;
    }

    private static bool SameTransition(long a, long b) => Math.Abs(a - b) < MillisPerDay;

    private static AmbiguousRun DecideRun(ReadOnlySpan<long> millis, ReadOnlySpan<long> sequence, List<int> rows, AmbiguousChoice? choice)
    {
        int? step = null;
        var steps = 0;
        for (var k = 1; k < rows.Count; k++)
        {
            if (millis[rows[k]] >= millis[rows[k - 1]])
                continue;
            steps++;
            step = rows[k];
            if (!sequence.IsEmpty && sequence[rows[k]] != long.MinValue && sequence[rows[k]] <= sequence[rows[k - 1]])
                steps++; // The device's own count went back too: no proof that the rows are in order.
        }

        if (choice is not null)
            return new AmbiguousRun(rows[0], rows[^1], AmbiguousDecision.ByPerson);
        return steps == 1
            ? new AmbiguousRun(rows[0], rows[^1], AmbiguousDecision.ByOrder, step)
            : new AmbiguousRun(rows[0], rows[^1], AmbiguousDecision.Open);
    }

    private void Remember(ZoneInterval interval)
    {
        _safeOffset = interval.WallOffset.Milliseconds;
        _safeFrom = interval.HasStart ? interval.Start.ToUnixTimeMilliseconds() + _safeOffset + MillisPerDay : long.MinValue;
        _safeUpTo = interval.HasEnd ? interval.End.ToUnixTimeMilliseconds() + _safeOffset - MillisPerDay : long.MaxValue;
    }
}
