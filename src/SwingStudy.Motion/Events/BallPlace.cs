namespace SwingStudy.Motion.Events;

/// <summary>Where the ball lay in the swings of a session, and by it where the head was at contact in each of them.</summary>
/// <remarks>
/// Place of contact of a swing = place common to the swings + how far this ball lay from it (scatter τ). A break in the shaft's turn tells the place with its own
/// standard error; a mark tells it with a delay common to all marks (of sound, of a switch) and a scatter σ in time; where a player sets the head down before the
/// swing follows the ball at a common distance, with a scatter η. Neither τ nor σ nor η is assumed: each has a uniform prior, and estimates are averaged over what
/// the swings leave possible, so that a ball that is never placed twice alike takes nothing from the single swing's own evidence. Where marks are all there is,
/// the swings tell only the sum τ² + (σ·speed)²; averaging then comes out near equal weights, which err by about half the root of that sum whichever of the two it
/// is made of. Place, delay and distance are solved exactly for each τ, σ and η. Sources: Gelman et al. (2013),
/// Bayesian Data Analysis, ch. 5 (normal hierarchy, uniform prior on its standard deviation); Robinson (1991), Stat Sci 6:15 (prediction of the single places).
/// </remarks>
/// <param name="PlaceM">Common place, metres along the direction of travel.</param>
/// <param name="PlaceScatterM">Its standard error.</param>
/// <param name="BallScatterM">How far the single balls lie from it: mean of what is possible for τ.</param>
/// <param name="Swings">Place of contact in each swing with its standard error, in the order given; the common place, with the scatter of the balls, where a swing tells nothing itself.</param>
public sealed record BallPlace(double PlaceM, double PlaceScatterM, double BallScatterM, IReadOnlyList<(double PlaceM, double ScatterM)> Swings)
{
    /// <summary>Fewer swings tell no common place: of five, one may be grossly wrong and shows.</summary>
    public const int LeastSwings = 5;

    /// <summary>Fewer swings with both a mark and a break do not tell how late marks are.</summary>
    private const int LeastForDelay = 3;

    /// <summary>Marks are late by up to several milliseconds: sound takes 3 ms a metre.</summary>
    private const double DelayPriorS = 0.003;

    private const int Steps = 28;
    private const int StepsOfThree = 14;
    private const double LeastShare = 0.02;
    private const double MostShare = 8;
    private const double LeastScaleM = 1e-4;

    /// <summary>Scatters whose logarithmic weight lies so far below the best weigh nothing.</summary>
    private const double Negligible = 12;

    /// <summary>The common place; null when too few swings tell of it.</summary>
    /// <param name="swings">Evidence of each swing, of one place and free of gross errors (<see cref="PlaceGroup"/>).</param>
    public static BallPlace? Of(IReadOnlyList<ContactEvidence> swings)
    {
        List<ContactEvidence> told = [.. swings.Where(swing => swing.HasMark || swing.HasBreak)];
        if (told.Count < LeastSwings)
            return null;
        List<ContactEvidence> both = [.. told.Where(swing => swing.HasMark && swing.HasBreak)];
        double[] addresses = [.. told.Where(swing => swing.HasAddress).Select(swing => swing.AddressAtM)];
        var (hasMarks, hasDelay, hasAddress) = (told.Any(swing => swing.HasMark), both.Count >= LeastForDelay, addresses.Length >= LeastSwings);
        var speed = told.Average(swing => swing.SpeedMps);
        double[] places = [.. told.Select(swing => swing.HasBreak ? swing.BreakAtM : swing.MarkedAtM)];
        var origin = places.Average();
        var scale = Math.Max(LeastScaleM, Deviation(places));
        if (hasDelay)
            scale = Math.Max(scale, Deviation([.. both.Select(swing => swing.MarkedAtM - swing.BreakAtM)]));
        var addressScale = hasAddress ? Math.Max(LeastScaleM, Deviation(addresses)) : 0;
        var model = new PlaceModel(told, origin, hasDelay ? 1 / (DelayPriorS * DelayPriorS) : double.PositiveInfinity, hasAddress ? addresses.Average() : double.NaN);
        var shares = Shares(hasMarks && hasAddress ? StepsOfThree : Steps);
        var (solved, most) = (new List<(PlaceSolution Solution, double LogWeight)>(), double.NegativeInfinity);
        foreach (var (ball, ballStep) in shares)
        {
            foreach (var (mark, markStep) in hasMarks ? shares : [(0, 1)])
            {
                foreach (var (address, addressStep) in hasAddress ? shares : [(0, 1)])
                {
                    var prior = Math.Log(ballStep * markStep * addressStep);
                    if (model.Solve(scale * ball, scale * mark / speed, addressScale * address, most - Negligible - prior) is not { } solution)
                        continue;
                    solved.Add((solution, solution.LogLikelihood + prior));
                    most = Math.Max(most, solution.LogLikelihood + prior);
                }
            }
        }

        return Averaged(swings, [.. solved.Where(one => one.LogWeight >= most - Negligible)], origin);
    }

    private static BallPlace Averaged(IReadOnlyList<ContactEvidence> swings, List<(PlaceSolution Solution, double LogWeight)> solved, double origin)
    {
        var most = solved.Max(one => one.LogWeight);
        double[] weights = [.. solved.Select(one => Math.Exp(one.LogWeight - most))];
        var sum = weights.Sum();
        var place = Mixed(solution => solution.Place, solution => solution.PlaceVariance);
        var ball = Mixed(solution => solution.BallScatter, _ => 0).Mean;
        var next = 0;
        var found = new (double, double)[swings.Count];
        for (var i = 0; i < swings.Count; i++)
        {
            var k = swings[i].HasMark || swings[i].HasBreak ? next++ : -1;
            var (mean, variance) = k < 0
                ? Mixed(solution => solution.Place, solution => solution.PlaceVariance + (solution.BallScatter * solution.BallScatter))
                : Mixed(solution => solution.Swings[k].Place, solution => solution.Swings[k].Variance);
            found[i] = (origin + mean, Math.Sqrt(variance));
        }

        return new BallPlace(origin + place.Mean, Math.Sqrt(place.Variance), ball, found);

        // Mean and variance of a mixture of normals.
        (double Mean, double Variance) Mixed(Func<PlaceSolution, double> meanOf, Func<PlaceSolution, double> varianceOf)
        {
            var (first, second) = (0.0, 0.0);
            for (var i = 0; i < weights.Length; i++)
            {
                var value = meanOf(solved[i].Solution);
                first += weights[i] * value / sum;
                second += weights[i] * ((value * value) + varianceOf(solved[i].Solution)) / sum;
            }

            return (first, Math.Max(0, second - (first * first)));
        }
    }

    /// <summary>Standard deviations that are tried, as shares of the scatter seen, evenly spaced in their logarithm, with the width each stands for.</summary>
    private static (double Share, double Width)[] Shares(int steps)
    {
        var ratio = Math.Pow(MostShare / LeastShare, 1.0 / (steps - 1));
        return [.. Enumerable.Range(0, steps).Select(i => LeastShare * Math.Pow(ratio, i)).Select(share => (share, share * Math.Log(ratio)))];
    }

    private static double Deviation(double[] values)
    {
        var mean = values.Average();
        return Math.Sqrt(values.Sum(value => (value - mean) * (value - mean)) / Math.Max(1, values.Length - 1));
    }
}
