using SwingStudy.Domain.Tables;
using SwingStudy.Motion.Events;

namespace SwingStudy.Pipeline.Analyse.Curves;

/// <summary>The events of a swing onto which curves are laid, seconds relative to impact; NaN where not found.</summary>
/// <param name="Start">Start of the swing.</param>
/// <param name="Top">Top of the backswing.</param>
/// <param name="Impact">Impact; 0 where no event says otherwise, since that is where time begins.</param>
internal readonly record struct SwingMoments(double Start, double Top, double Impact)
{
    /// <summary>Columns of <c>swing_events</c> that are needed.</summary>
    public static IReadOnlyList<string> Columns { get; } = ["swing_id", "event", "time_s", "method", "confidence"];

    /// <summary>A swing without events.</summary>
    public static SwingMoments None { get; } = new(double.NaN, double.NaN, 0);

    /// <summary>Whether all are known and follow each other.</summary>
    public bool AreInOrder => Start < Top && Top < Impact;

    /// <summary>The events of each swing. Where several rules found one, the surest counts.</summary>
    public static IReadOnlyDictionary<string, SwingMoments> Of(RowSet events)
    {
        var (swings, names, times) = (events.Texts("swing_id"), events.Texts("event"), events.Numbers("time_s"));
        var (methods, sure) = (events.Texts("method"), events.Numbers("confidence"));
        var moments = new Dictionary<string, SwingMoments>(StringComparer.Ordinal);
        foreach (var row in Enumerable.Range(0, events.Count).Where(row => swings[row] is not null && double.IsFinite(times[row]))
            .OrderBy(row => double.IsNaN(sure[row]) ? -1 : sure[row]).ThenByDescending(row => methods[row], StringComparer.Ordinal).ThenBy(row => times[row]))
        {
            var known = moments.GetValueOrDefault(swings[row]!, None);
            moments[swings[row]!] = names[row] switch
            {
                EventNames.Start => known with { Start = times[row] },
                EventNames.Top => known with { Top = times[row] },
                EventNames.Impact => known with { Impact = times[row] },
                _ => known,
            };
        }

        return moments;
    }
}
