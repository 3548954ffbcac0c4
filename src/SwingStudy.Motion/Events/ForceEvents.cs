using SwingStudy.Motion.Forces;
using SwingStudy.Motion.Geometry;

namespace SwingStudy.Motion.Events;

/// <summary>Events from force plates alone.</summary>
/// <remarks>
/// Plates do not see the club: there is no top. The least vertical force before impact stands for the beginning of the downswing, and the first lasting
/// departure of the centre of pressure or the vertical force from stillness for the start. Common practice, no source.
/// </remarks>
public static class ForceEvents
{
    /// <summary>Event that stands for the top where only forces are known.</summary>
    public const string Unweighting = "unweighting";

    private const double LongestDownswingS = 0.6;
    private const double DepartureS = 0.02;
    private const double DepartureScatters = 5;

    /// <summary>The least summed vertical force in the time before impact that a downswing may take; null when it is not inside that time.</summary>
    /// <param name="vertical">Summed vertical force.</param>
    /// <param name="axis">Its times.</param>
    /// <param name="impactS">Impact.</param>
    public static SwingEvent? LeastVertical(ReadOnlySpan<double> vertical, TimeAxis axis, double impactS)
    {
        if (Span.Lowest(vertical, axis, impactS - LongestDownswingS, impactS) is not { } least
            || least.Index <= axis.From(impactS - LongestDownswingS) || least.Index >= axis.To(impactS))
            return null;
        return new SwingEvent(Unweighting, axis.TimeOf(least.Position), "least summed vertical force before impact", 0.6);
    }

    /// <summary>The start: when force or centre of pressure leave stillness by five of its standard deviations for 20 ms; null when there is no stillness.</summary>
    /// <param name="reaction">Both feet together.</param>
    /// <param name="axis">Times.</param>
    /// <param name="still">The still time before the swing.</param>
    /// <param name="impactS">Impact.</param>
    public static SwingEvent? Start(GroundReaction reaction, TimeAxis axis, QuietStanding still, double impactS)
    {
        int? vertical = Departure(reaction.ForceY, axis, still, impactS), along = Departure(reaction.CentreX, axis, still, impactS);
        var first = vertical is { } v && along is { } a ? Math.Min(v, a) : vertical ?? along;
        return first is { } at ? new SwingEvent(EventNames.Start, axis.TimeOf(at), "force or centre of pressure leaves stillness", 0.5) : null;
    }

    private static int? Departure(double[] values, TimeAxis axis, QuietStanding still, double impactS)
    {
        var (from, to) = (axis.From(still.FromS), axis.To(still.ToS));
        var mean = Span.Mean(values, axis, still.FromS, still.ToS);
        var squares = 0.0;
        for (var i = from; i <= to; i++)
            squares += (values[i] - mean) * (values[i] - mean);
        var limit = DepartureScatters * Math.Sqrt(squares / Math.Max(1, to - from));
        var needed = Math.Max(2, (int)Math.Round(DepartureS * axis.SampleRateHz));
        var run = 0;
        for (var i = to + 1; i <= axis.To(impactS); i++)
        {
            run = Math.Abs(values[i] - mean) > limit ? run + 1 : 0;
            if (run == needed)
                return i - needed + 1;
        }

        return null;
    }
}
