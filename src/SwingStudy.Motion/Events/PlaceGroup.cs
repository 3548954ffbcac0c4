using SwingStudy.Motion.Signals;

namespace SwingStudy.Motion.Events;

/// <summary>Swings of one place of the ball, gross errors left out.</summary>
/// <remarks>
/// A ball may be moved within a session, or clubs alternate that meet it elsewhere: swings are parted in two, and each part again, where the split of least squares
/// leaves at least <see cref="BallPlace.LeastSwings"/> on either side whose means lie more than five standard deviations within the parts asunder (the halves of one
/// normal sample lie under three, those of an even spread under four). Within a part, what lies more than five robust standard deviations off is no part of it:
/// of a mark and a break that disagree the one that lies with the others stays; where both agree, this ball lay elsewhere.
/// </remarks>
/// <param name="Members">Positions of the swings.</param>
/// <param name="Evidence">Their evidence.</param>
internal sealed record PlaceGroup(IReadOnlyList<int> Members, IReadOnlyList<ContactEvidence> Evidence)
{
    private const double Apart = 5;
    private const double TooFar = 5;
    private const double LeastScaleM = 1e-4;

    /// <summary>The groups of a session, each with enough swings for a common place; swings that are in none stand alone.</summary>
    /// <param name="swings">Evidence of each swing; those without any are in no group.</param>
    public static IReadOnlyList<PlaceGroup> Of(IReadOnlyList<ContactEvidence> swings)
    {
        // How marks lie against breaks, where swings have both.
        List<ContactEvidence> both = [.. swings.Where(swing => swing.HasMark && swing.HasBreak)];
        var (delay, markScale) = both.Count >= BallPlace.LeastSwings
            ? Spikes.Middle([.. both.Select(swing => (swing.MarkedAtM - swing.BreakAtM) / swing.SpeedMps)])
            : (0, double.PositiveInfinity);
        double FromMark(int i) => swings[i].MarkedAtM - (delay * swings[i].SpeedMps);
        double Own(int i) => swings[i].HasBreak ? swings[i].BreakAtM : FromMark(i);
        int[] told = [.. Enumerable.Range(0, swings.Count).Where(i => swings[i].HasMark || swings[i].HasBreak).OrderBy(Own)];
        return [.. Parted(told, Own).Select(Cleaned).Where(group => group.Members.Count >= BallPlace.LeastSwings)];

        PlaceGroup Cleaned(int[] part)
        {
            var (middle, scale) = Spikes.Middle([.. part.Select(Own)]);
            scale = Math.Max(scale, LeastScaleM);
            var (members, evidence) = (new List<int>(), new List<ContactEvidence>());
            foreach (var i in part.Order())
            {
                var swing = swings[i];
                var isMarkOff = swing.HasMark && swing.HasBreak
                    && Math.Abs(FromMark(i) - swing.BreakAtM) > TooFar * Math.Max(markScale * swing.SpeedMps, Math.Max(swing.BreakScatterM, swing.MarkFloorM));
                if (IsNear(Own(i)))
                    evidence.Add(isMarkOff ? swing.WithoutMark() : swing);
                else if (isMarkOff && IsNear(FromMark(i)))
                    evidence.Add(swing.WithoutBreak());
                else
                    continue;
                members.Add(i);

                bool IsNear(double place) => Math.Abs(place - middle) <= TooFar * Math.Max(scale, swing.HasBreak ? swing.BreakScatterM : swing.MarkFloorM);
            }

            return new PlaceGroup(members, evidence);
        }
    }

    /// <summary>Swings in order of their places, parted where two places are clearly apart.</summary>
    private static IEnumerable<int[]> Parted(int[] ordered, Func<int, double> placeOf)
    {
        double[] places = [.. ordered.Select(placeOf)];
        (int Split, double Squares)? best = null;
        for (var split = BallPlace.LeastSwings; split <= places.Length - BallPlace.LeastSwings; split++)
        {
            var squares = Squares(places.AsSpan(..split)) + Squares(places.AsSpan(split..));
            if (best is null || squares < best.Value.Squares)
                best = (split, squares);
        }

        if (best is not { } found)
            return [ordered];
        var within = Math.Max(LeastScaleM, Math.Sqrt(found.Squares / (places.Length - 2)));
        return places.Skip(found.Split).Average() - places.Take(found.Split).Average() > Apart * within
            ? [.. Parted(ordered[..found.Split], placeOf), .. Parted(ordered[found.Split..], placeOf)]
            : [ordered];
    }

    private static double Squares(ReadOnlySpan<double> values)
    {
        var (sum, squares) = (0.0, 0.0);
        foreach (var value in values)
            sum += value;
        foreach (var value in values)
            squares += (value - (sum / values.Length)) * (value - (sum / values.Length));
        return squares;
    }
}
