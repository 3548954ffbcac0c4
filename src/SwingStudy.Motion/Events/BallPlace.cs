namespace SwingStudy.Motion.Events;

/// <summary>Where the ball lay in the swings of a session, and by it where the head was at contact in each of them.</summary>
/// <remarks>
/// Place of contact of a swing = place common to the swings + how far this ball lay from it (scatter τ). A break in the shaft's turn tells the place with its own
/// standard error; a mark tells it with a delay common to all marks (of sound, of a switch) and a scatter σ in time. Neither τ nor σ is assumed: both have a
/// uniform prior, and estimates are averaged over what the swings leave possible, so that a ball that is never placed twice alike takes nothing from the single
/// swing's own evidence. Where marks are all there is, the swings tell only the sum τ² + (σ·speed)²; averaging then comes out near equal weights, which err by no
/// more than half the root of that sum whichever of the two it is made of. Place and delay are solved exactly for each τ and σ. Sources: Gelman et al. (2013),
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
    private const double LeastShare = 0.01;
    private const double MostShare = 10;
    private const double LeastScaleM = 1e-4;

    /// <summary>The common place; null when too few swings tell of it.</summary>
    /// <param name="swings">Evidence of each swing, of one place and free of gross errors (<see cref="PlaceGroup"/>).</param>
    public static BallPlace? Of(IReadOnlyList<ContactEvidence> swings)
    {
        List<ContactEvidence> told = [.. swings.Where(swing => swing.HasMark || swing.HasBreak)];
        if (told.Count < LeastSwings)
            return null;
        var (hasMarks, hasDelay) = (told.Any(swing => swing.HasMark), told.Count(swing => swing.HasMark && swing.HasBreak) >= LeastForDelay);
        var speed = told.Average(swing => swing.SpeedMps);
        double[] places = [.. told.Select(swing => swing.HasBreak ? swing.BreakAtM : swing.MarkedAtM)];
        var origin = places.Average();
        var scale = Math.Max(LeastScaleM, Deviation(places));
        if (hasDelay)
            scale = Math.Max(scale, Deviation([.. told.Where(swing => swing.HasMark && swing.HasBreak).Select(swing => swing.MarkedAtM - swing.BreakAtM)]));
        var model = new Model(told, origin, hasDelay ? 1 / (DelayPriorS * DelayPriorS) : double.PositiveInfinity);
        var shares = Shares();
        var solved = new List<(Solution Solution, double LogWeight)>();
        foreach (var (ball, ballStep) in shares)
        {
            foreach (var (mark, markStep) in hasMarks ? shares : [(0, 1)])
            {
                var solution = model.Solve(scale * ball, scale * mark / speed);
                solved.Add((solution, solution.LogLikelihood + Math.Log(ballStep * markStep)));
            }
        }

        return Averaged(swings, solved, origin);
    }

    private static BallPlace Averaged(IReadOnlyList<ContactEvidence> swings, List<(Solution Solution, double LogWeight)> solved, double origin)
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
        (double Mean, double Variance) Mixed(Func<Solution, double> meanOf, Func<Solution, double> varianceOf)
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
    private static (double Share, double Width)[] Shares()
    {
        var ratio = Math.Pow(MostShare / LeastShare, 1.0 / (Steps - 1));
        return [.. Enumerable.Range(0, Steps).Select(i => LeastShare * Math.Pow(ratio, i)).Select(share => (share, share * Math.Log(ratio)))];
    }

    private static double Deviation(double[] values)
    {
        var mean = values.Average();
        return Math.Sqrt(values.Sum(value => (value - mean) * (value - mean)) / Math.Max(1, values.Length - 1));
    }

    /// <summary>Places for one τ and σ; origin taken off.</summary>
    private sealed record Solution(double BallScatter, double LogLikelihood, double Place, double PlaceVariance, (double Place, double Variance)[] Swings);

    /// <summary>Marks and breaks as a linear model of two fixed effects, place and delay, with a random place for each swing.</summary>
    private sealed class Model(List<ContactEvidence> swings, double origin, double delayPrecision)
    {
        private readonly bool _hasDelay = !double.IsPositiveInfinity(delayPrecision);

        public Solution Solve(double ball, double mark)
        {
            // Normal equations of place and delay, prior of the delay included; the first pass sums them, the second predicts each swing.
            var (a, b, c, right, rightDelay, squares, logDeterminant) = (0.0, 0.0, _hasDelay ? delayPrecision : 1.0, 0.0, 0.0, 0.0, 0.0);
            var terms = new Terms[swings.Count];
            for (var i = 0; i < terms.Length; i++)
            {
                var own = terms[i] = Terms.Of(swings[i], origin, ball, mark);
                a += own.Sum;
                right += own.SumOf;
                squares += own.Squares;
                logDeterminant += own.LogDeterminant;
                if (!_hasDelay)
                    continue;
                b += own.Speed * own.MarkSum;
                c += own.Speed * own.Speed * own.MarkMark;
                rightDelay += own.Speed * own.MarkOf;
            }

            var determinant = (a * c) - (b * b);
            var (place, delay) = (((c * right) - (b * rightDelay)) / determinant, ((a * rightDelay) - (b * right)) / determinant);
            var (varPlace, varDelay, covariance) = (c / determinant, _hasDelay ? a / determinant : 0, -b / determinant);
            var likelihood = -0.5 * (logDeterminant + Math.Log(determinant) + squares - (right * place) - (rightDelay * delay));
            var found = new (double, double)[terms.Length];
            for (var i = 0; i < terms.Length; i++)
            {
                var own = terms[i];
                var pull = ball * ball;
                var value = place + (pull * (own.SumOf - (own.Sum * place) - (own.MarkSum * own.Speed * delay)));
                var (onPlace, onDelay) = (1 - (pull * own.Sum), -pull * own.MarkSum * own.Speed);
                found[i] = (value, pull - (pull * own.Sum * pull) + (onPlace * onPlace * varPlace) + (onDelay * onDelay * varDelay) + (2 * onPlace * onDelay * covariance));
            }

            return new Solution(ball, likelihood, place, varPlace, found);
        }
    }

    /// <summary>One swing's evidence weighed by the inverse of its covariance.</summary>
    /// <param name="Speed">Speed of the head.</param>
    /// <param name="Sum">Sum of the inverse.</param>
    /// <param name="MarkSum">Sum of the mark's row.</param>
    /// <param name="MarkMark">The mark's own element.</param>
    /// <param name="SumOf">Evidence times the inverse, summed.</param>
    /// <param name="MarkOf">The mark's row times the evidence.</param>
    /// <param name="Squares">Evidence twice times the inverse.</param>
    /// <param name="LogDeterminant">Logarithm of the covariance's determinant.</param>
    private readonly record struct Terms(double Speed, double Sum, double MarkSum, double MarkMark, double SumOf, double MarkOf, double Squares, double LogDeterminant)
    {
        public static Terms Of(ContactEvidence swing, double origin, double ball, double mark)
        {
            var shared = ball * ball;
            var ofMark = shared + (swing.SpeedMps * swing.SpeedMps * mark * mark) + (swing.MarkFloorM * swing.MarkFloorM);
            var ofBreak = shared + (swing.BreakScatterM * swing.BreakScatterM);
            var (marked, broken) = (swing.MarkedAtM - origin, swing.BreakAtM - origin);
            if (!swing.HasBreak)
                return new Terms(swing.SpeedMps, 1 / ofMark, 1 / ofMark, 1 / ofMark, marked / ofMark, marked / ofMark, marked * marked / ofMark, Math.Log(ofMark));
            if (!swing.HasMark)
                return new Terms(swing.SpeedMps, 1 / ofBreak, 0, 0, broken / ofBreak, 0, broken * broken / ofBreak, Math.Log(ofBreak));
            var determinant = (ofMark * ofBreak) - (shared * shared);
            var (mm, bb, mb) = (ofBreak / determinant, ofMark / determinant, -shared / determinant);
            var (fromMark, fromBreak) = ((mm * marked) + (mb * broken), (mb * marked) + (bb * broken));
            return new Terms(
                swing.SpeedMps, mm + bb + (2 * mb), mm + mb, mm, fromMark + fromBreak, fromMark, (fromMark * marked) + (fromBreak * broken), Math.Log(determinant));
        }
    }
}
