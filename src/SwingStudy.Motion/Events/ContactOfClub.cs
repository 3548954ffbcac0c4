using SwingStudy.Motion.Geometry;
using SwingStudy.Motion.Kinematics;
using SwingStudy.Motion.Signals;

namespace SwingStudy.Motion.Events;

/// <summary>Contact as the club shows it: where the turn of the shaft breaks because the ball takes speed from the head.</summary>
/// <remarks>
/// A mark of contact may be set to a frame, wait for sound to travel (3 ms a metre), or come late from a switch; within one millisecond the head's direction
/// turns by more than a degree. The turn of the shaft before and after contact are two curves; they meet at contact. The samples are parted where both
/// together fit best, and the moment is where the two curves cross. Source: Hudson (1966), J Am Stat Assoc 61:1097, segmented curves whose join is estimated.
/// </remarks>
/// <param name="TimeS">Contact.</param>
/// <param name="ScatterS">Standard error that the noise of the marks makes.</param>
public sealed record ContactOfClub(double TimeS, double ScatterS)
{
    /// <summary>How far from a mark of contact the break is looked for, seconds, or two samples.</summary>
    private const double ReachS = 0.008;

    private const double BeforeS = 0.08;
    private const double AfterS = 0.04;
    private const int LeastSamples = 4;

    /// <summary>A ball takes more than a twelfth of the turn, and the loss must stand five standard errors above noise.</summary>
    private const double LeastLoss = 0.08;
    private const double LeastLossScatters = 5;

    /// <summary>A less certain break would not better a mark.</summary>
    private const double MostScatterS = 0.0005;

    /// <summary>Contact near a mark of it; null when the turn shows no clear break there, as in swings without a ball.</summary>
    /// <param name="hands">A mark at the hands.</param>
    /// <param name="head">The club head; samples that were not seen are left out.</param>
    /// <param name="markedS">Contact as it was marked.</param>
    public static ContactOfClub? Near(Trajectory hands, Trajectory head, double markedS)
    {
        var frame = 1 / head.Axis.SampleRateHz;
        var reach = Math.Max(ReachS, 2 * frame);
        if (ClubTurn.Between(hands, head, markedS - Math.Max(BeforeS, 8 * frame), markedS + Math.Max(AfterS, 6 * frame), 3 * LeastSamples) is not { } club)
            return null;
        var quiet = club.Times.TakeWhile(time => time < markedS - reach).Count();
        if (quiet < LeastSamples)
            return null;
        var length = club.Distance.Average();
        var variance = club.ShaftVariance(0, quiet) / (length * length);
        Break? best = null;
        for (var split = Math.Max(LeastSamples, quiet); split <= club.Times.Length - LeastSamples && club.Times[split - 1] <= markedS + reach; split++)
        {
            var found = Break.At(club, split, variance);
            if (best is null || found.Misfit < best.Misfit)
                best = found;
        }

        return best is { } contact && Math.Abs(contact.TimeS - markedS) <= reach && contact.IsClear(frame) ? new ContactOfClub(contact.TimeS, contact.ScatterS) : null;
    }

    /// <summary>The samples parted before one of them.</summary>
    private sealed record Break(double TimeS, double ScatterS, double RateBefore, double Loss, double LossScatter, double GapFromS, double GapToS, double Misfit)
    {
        public static Break At(ClubTurn club, int split, double variance)
        {
            var time = (club.Times[split - 1] + club.Times[split]) / 2;
            RestrainedPolynomial before, after;
            for (var round = 0; ; round++)
            {
                before = Fit(club.Times.AsSpan(..split), club.Turn.AsSpan(..split));
                after = Fit(club.Times.AsSpan(split..), club.Turn.AsSpan(split..));
                var step = (after.Value - before.Value) / (before.Slope - after.Slope);
                if (round == 3 || !(Math.Abs(step) < AfterS))
                    break;
                time += step;
            }

            var loss = before.Slope - after.Slope;
            return new Break(
                time, Math.Sqrt(before.ValueVariance + after.ValueVariance) / Math.Abs(loss), before.Slope, loss, Math.Sqrt(before.SlopeVariance + after.SlopeVariance),
                club.Times[split - 1], club.Times[split], before.Misfit + after.Misfit);

            RestrainedPolynomial Fit(ReadOnlySpan<double> times, ReadOnlySpan<double> turns)
            {
                var since = new double[times.Length];
                for (var i = 0; i < since.Length; i++)
                    since[i] = times[i] - time;
                return RestrainedPolynomial.Of(since, turns, variance, club.Rate, club.OwnTimeS);
            }
        }

        public bool IsClear(double frame) =>
            Loss > LeastLoss * RateBefore && Loss > LeastLossScatters * LossScatter && ScatterS < MostScatterS && TimeS > GapFromS - (frame / 2) && TimeS < GapToS + (frame / 2);
    }
}
