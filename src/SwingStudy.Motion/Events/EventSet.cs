namespace SwingStudy.Motion.Events;

/// <summary>The events of one swing.</summary>
/// <param name="Found">Events that were found, in the order of <see cref="EventNames.All"/>.</param>
/// <param name="Failed">Events that were looked for in vain.</param>
public sealed record EventSet(IReadOnlyList<SwingEvent> Found, IReadOnlyList<FailedEvent> Failed)
{
    /// <summary>No events.</summary>
    public static EventSet None { get; } = new([], []);

    /// <summary>Time of an event; NaN when it was not found.</summary>
    public double TimeOf(string name) => Found.FirstOrDefault(e => e.Name == name)?.TimeS ?? double.NaN;

    /// <summary>Why an event is missing; null when it was found or not looked for.</summary>
    public string? ReasonOf(string name) => Failed.FirstOrDefault(e => e.Name == name)?.Reason;

    /// <summary>The same with the order held: start &lt; top &lt; grip peak ≤ impact &lt; finish, address and transition where they belong.</summary>
    /// <remarks>Of two events out of order the less certain one fails, both where they are equally certain; nothing is moved. Impact never fails here.</remarks>
    public EventSet Ordered()
    {
        var found = Found.ToDictionary(e => e.Name);
        var failed = Failed.ToList();
        foreach (var (earlier, later, mayMeet) in Rules)
        {
            if (!found.TryGetValue(earlier, out var first) || !found.TryGetValue(later, out var second)
                || first.TimeS < second.TimeS || (mayMeet && first.TimeS == second.TimeS))
                continue;
            var reason = $"{earlier} at {Milliseconds(first)} ms would not come before {later} at {Milliseconds(second)} ms";
            foreach (var loser in new[] { first, second }.Where(e => e.Name != EventNames.Impact && e.Confidence <= Other(e)))
            {
                found.Remove(loser.Name);
                failed.Add(new FailedEvent(loser.Name, reason));
            }

            double Other(SwingEvent e) => e == first ? Certain(second) : Certain(first);
        }

        return new EventSet([.. EventNames.All.Where(found.ContainsKey).Select(name => found[name])], failed);
    }

    private static readonly (string Earlier, string Later, bool MayMeet)[] Rules =
    [
        (EventNames.Top, EventNames.Impact, false),
        (EventNames.Start, EventNames.Top, false),
        (EventNames.Start, EventNames.Impact, false),
        (EventNames.Address, EventNames.Start, true),
        (EventNames.Start, EventNames.Transition, false),
        (EventNames.Transition, EventNames.Impact, false),
        (EventNames.Top, EventNames.GripPeak, false),
        (EventNames.GripPeak, EventNames.Impact, true),
        (EventNames.Impact, EventNames.Finish, false),
    ];

    private static double Certain(SwingEvent e) => e.Name == EventNames.Impact ? double.PositiveInfinity : e.Confidence;

    private static string Milliseconds(SwingEvent e) => (1000 * e.TimeS).ToString("0.0", System.Globalization.CultureInfo.InvariantCulture);
}
