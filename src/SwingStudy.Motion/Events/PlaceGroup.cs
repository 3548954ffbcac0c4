namespace SwingStudy.Motion.Events;

/// <summary>Swings of one place of the ball, gross errors left out.</summary>
/// <remarks>
/// A ball may be moved within a session, or clubs alternate that meet it elsewhere: n swings are parted in two, and each part again, where the split of least squares
/// leaves at least <see cref="BallPlace.LeastSwings"/> on either side whose means lie more than 3 + 32/n standard deviations within the parts asunder; one normal sample
/// of 8 to 40 does so in fewer than one of a hundred simulated cases. Within a part, what lies more than five robust standard deviations off, and farther than the head
/// goes in 2 ms, is no part of it (less is scatter, which <see cref="BallPlace"/> weighs): of a mark and a break that disagree the one that lies with the others stays;
/// where both agree, this ball lay elsewhere. The robust deviation is that within which three quarters of the swings lie about their median, over the normal 1.15,
/// so that a quarter of them may be grossly wrong.
/// </remarks>
/// <param name="Members">Positions of the swings.</param>
/// <param name="Evidence">Their evidence.</param>
internal sealed record PlaceGroup(IReadOnlyList<int> Members, IReadOnlyList<ContactEvidence> Evidence)
{
    private const double Apart = 3;
    private const double ApartOfFew = 32;
    private const double TooFar = 5;
    private const double LeastTooFarS = 0.002;
    private const double Share = 0.75;

    /// <summary>Normal deviations within which that share of a sample lies.</summary>
    private const double ShareDeviations = 1.1503;
    private const double LeastScaleM = 1e-4;

    /// <summary>The groups of a session, each with enough swings for a common place; swings that are in none stand alone.</summary>
    /// <param name="swings">Evidence of each swing; those without any are in no group.</param>
    public static IReadOnlyList<PlaceGroup> Of(IReadOnlyList<ContactEvidence> swings)
    {
        // How marks lie against breaks, where swings have both.
        List<ContactEvidence> both = [.. swings.Where(swing => swing.HasMark && swing.HasBreak)];
        var (delay, markScale) = both.Count >= BallPlace.LeastSwings
            ? Middle([.. both.Select(swing => (swing.MarkedAtM - swing.BreakAtM) / swing.SpeedMps)])
            : (0, double.PositiveInfinity);
        double FromMark(int i) => swings[i].MarkedAtM - (delay * swings[i].SpeedMps);
        double Own(int i) => swings[i].HasBreak ? swings[i].BreakAtM : FromMark(i);
        int[] told = [.. Enumerable.Range(0, swings.Count).Where(i => swings[i].HasMark || swings[i].HasBreak).OrderBy(Own)];
        return [.. Parted(told, Own).Select(Cleaned).Where(group => group.Members.Count >= BallPlace.LeastSwings)];

        PlaceGroup Cleaned(int[] part)
        {
            var (middle, scale) = Middle([.. part.Select(Own)]);
            scale = Math.Max(scale, LeastScaleM);
            var (members, evidence) = (new List<int>(), new List<ContactEvidence>());
            foreach (var i in part.Order())
            {
                var swing = swings[i];
                var isMarkOff = swing.HasMark && swing.HasBreak
                    && Math.Abs(FromMark(i) - swing.BreakAtM) > Reach(swing, Math.Max(markScale * swing.SpeedMps, Math.Max(swing.BreakScatterM, swing.MarkFloorM)));
                if (IsNear(Own(i)))
                    evidence.Add(isMarkOff ? swing.WithoutMark() : swing);
                else if (isMarkOff && IsNear(FromMark(i)))
                    evidence.Add(swing.WithoutBreak());
                else
                    continue;
                members.Add(i);

                bool IsNear(double place) => Math.Abs(place - middle) <= Reach(swing, Math.Max(scale, swing.HasBreak ? swing.BreakScatterM : swing.MarkFloorM));
            }

            return new PlaceGroup(members, evidence);
        }
    }

    /// <summary>How far off is too far.</summary>
    private static double Reach(ContactEvidence swing, double scale) => Math.Max(TooFar * scale, LeastTooFarS * swing.SpeedMps);

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
        return places.Skip(found.Split).Average() - places.Take(found.Split).Average() > (Apart + (ApartOfFew / places.Length)) * within
            ? [.. Parted(ordered[..found.Split], placeOf), .. Parted(ordered[found.Split..], placeOf)]
            : [ordered];
    }

    private static (double Median, double Scale) Middle(double[] values)
    {
        var median = Quantile([.. values.Order()], 0.5);
        return (median, Quantile([.. values.Select(value => Math.Abs(value - median)).Order()], Share) / ShareDeviations);
    }

    private static double Quantile(double[] ordered, double share)
    {
        var position = share * (ordered.Length - 1);
        var below = (int)position;
        return ordered[below] + ((position - below) * (ordered[Math.Min(below + 1, ordered.Length - 1)] - ordered[below]));
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
