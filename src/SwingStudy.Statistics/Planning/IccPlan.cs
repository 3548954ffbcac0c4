using SwingStudy.Statistics.Chance;
using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Distributions;
using SwingStudy.Statistics.Resampling;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.Planning;

/// <summary>How many players a reliability study needs so that the interval of ICC(1,1) is as narrow as wanted.</summary>
public sealed record IccPlan
{
    /// <summary>Bonett's formula before rounding: 8z²(1 − ρ)²(1 + (k − 1)ρ)²/(k(k − 1)w²) + 1.</summary>
    public required double Raw { get; init; }

    /// <summary>Bonett's number of players: <see cref="Raw"/> rounded up.</summary>
    public required int Players { get; init; }

    /// <summary>The same with 5ρ more where k = 2, as Bonett advises for ρ of 0.7 or more; equal to <see cref="Players"/> for larger k.</summary>
    public required int PlayersPairCorrected { get; init; }

    /// <summary>Smallest number of players, at least 3, for which the exact interval of an observed ICC of ρ is no wider than wanted.</summary>
    public required int PlayersByExactInterval { get; init; }

    /// <summary>Number of players for an interval of a given width.</summary>
    /// <remarks>Source: Bonett (2002), Statistics in Medicine 21:1331–1335.</remarks>
    /// <param name="icc">Expected ICC ρ, in [0, 1).</param>
    /// <param name="measurements">Measurements k of each player, at least 2.</param>
    /// <param name="width">Wanted width of the interval, in (0, 1).</param>
    /// <param name="confidence">Level of the interval, a share.</param>
    /// <exception cref="ArgumentException">A number is out of range.</exception>
    public static IccPlan ForWidth(double icc, int measurements, double width, double confidence = 0.95)
    {
        Check(icc, measurements, confidence);
        if (!(width is >= 0.001 and < 1))
            throw new ArgumentException($"A width lies between 0.001 and 1; got {width}.", nameof(width));
        double z = Normal.Critical(confidence), k = measurements;
        var raw = (8 * z * z * Math.Pow((1 - icc) * (1 + ((k - 1) * icc)), 2) / (k * (k - 1) * width * width)) + 1;
        var corrected = measurements == 2 ? raw + (5 * icc) : raw;
        return new IccPlan
        {
            Raw = raw,
            Players = Math.Max(2, (int)Math.Ceiling(raw)),
            PlayersPairCorrected = Math.Max(2, (int)Math.Ceiling(corrected)),
            PlayersByExactInterval = Smallest(icc, measurements, width, confidence),
        };
    }

    /// <summary>The exact F interval of ICC(1,1) when the observed value is <paramref name="icc"/>.</summary>
    /// <remarks>
    /// F = (1 + (k − 1)ρ)/(1 − ρ), limits (F' − 1)/(F' + k − 1) with F' = F/F(1 − α/2; n − 1, n(k − 1)) and F·F(1 − α/2; n(k − 1), n − 1).
    /// Source: Shrout and Fleiss (1979), Psychological Bulletin 86:420–428.
    /// </remarks>
    /// <param name="icc">Observed ICC, in [0, 1).</param>
    /// <param name="players">Number of players, at least 2.</param>
    /// <param name="measurements">Measurements of each player, at least 2.</param>
    /// <param name="confidence">Level of the interval, a share.</param>
    /// <exception cref="ArgumentException">A number is out of range.</exception>
    public static Interval ExactInterval(double icc, int players, int measurements, double confidence = 0.95)
    {
        Check(icc, measurements, confidence);
        PowerClosedForm.RequireAtLeast(players, 2, nameof(players));
        var (toLow, toHigh) = Factors(players, measurements, confidence);
        return Limits((1 + ((measurements - 1) * icc)) / (1 - icc), toLow, toHigh, measurements, confidence);
    }

    /// <summary>Mean width and coverage of the exact interval over simulated studies of the one-way random normal model.</summary>
    /// <param name="icc">True ICC, in [0, 1).</param>
    /// <param name="players">Number of players, at least 2.</param>
    /// <param name="measurements">Measurements of each player, at least 2.</param>
    /// <param name="replications">Simulated studies, at least 2.</param>
    /// <param name="chance">The stream of the simulation; it is split, not drawn from.</param>
    /// <param name="confidence">Level of the interval, a share.</param>
    /// <param name="threads">Threads to use; they do not change the result.</param>
    /// <exception cref="ArgumentException">A number is out of range.</exception>
    public static IntervalSimulation Simulate(
        double icc, int players, int measurements, int replications, Xoshiro256 chance, double confidence = 0.95, int threads = 1)
    {
        Check(icc, measurements, confidence);
        PowerClosedForm.RequireAtLeast(players, 2, nameof(players));
        PowerClosedForm.RequireAtLeast(replications, 2, nameof(replications));
        var (toLow, toHigh) = Factors(players, measurements, confidence);
        var widths = new double[replications];
        var covered = 0;
        ResampleBlocks.Run(replications, threads, chance, (start, end, stream) =>
        {
            var normal = new NormalStream(stream);
            var hits = 0;
            for (var i = start; i < end; i++)
            {
                var interval = Limits(DrawnF(icc, players, measurements, normal), toLow, toHigh, measurements, confidence);
                widths[i] = interval.High - interval.Low;
                hits += interval.Contains(icc) ? 1 : 0;
            }

            Interlocked.Add(ref covered, hits);
        });
        var summary = Summary.Of(widths);
        return new IntervalSimulation(
            summary.Mean!.Value, summary.StandardDeviation!.Value / Math.Sqrt(replications), (double)covered / replications, replications);
    }

    private static double DrawnF(double icc, int players, int measurements, NormalStream normal)
    {
        double sum = 0, squares = 0, within = 0;
        for (var player = 0; player < players; player++)
        {
            var level = Math.Sqrt(icc) * normal.Next();
            double own = 0, ownSquares = 0;
            for (var i = 0; i < measurements; i++)
            {
                var value = level + (Math.Sqrt(1 - icc) * normal.Next());
                own += value;
                ownSquares += value * value;
            }

            within += ownSquares - (own * own / measurements);
            own /= measurements;
            sum += own;
            squares += own * own;
        }

        var between = measurements * (squares - (sum * sum / players)) / (players - 1);
        return between / (within / (players * (measurements - 1.0)));
    }

    private static (double ToLow, double ToHigh) Factors(int players, int measurements, double confidence)
    {
        double upper = (1 + confidence) / 2, between = players - 1, within = players * (measurements - 1.0);
        return (1 / FisherF.Quantile(upper, between, within), FisherF.Quantile(upper, within, between));
    }

    private static Interval Limits(double f, double toLow, double toHigh, int measurements, double confidence)
    {
        double low = f * toLow, high = f * toHigh;
        return new Interval((low - 1) / (low + measurements - 1), (high - 1) / (high + measurements - 1), confidence);
    }

    private static int Smallest(double icc, int measurements, double width, double confidence)
    {
        // Widths fall with the number of players from a handful on: double until narrow enough, then close in; the few smallest are tried in turn.
        for (var few = 3; few <= 16; few++)
        {
            if (Width(few) <= width)
                return few;
        }

        var high = 32;
        while (Width(high) > width)
            high *= 2;
        var low = high / 2;
        while (high - low > 1)
        {
            var middle = (low + high) / 2;
            if (Width(middle) <= width)
                high = middle;
            else
                low = middle;
        }

        return high;

        double Width(int players)
        {
            var interval = ExactInterval(icc, players, measurements, confidence);
            return interval.High - interval.Low;
        }
    }

    private static void Check(double icc, int measurements, double confidence)
    {
        Finite.RequireConfidence(confidence);
        PowerClosedForm.RequireAtLeast(measurements, 2, nameof(measurements));
        if (!(icc is >= 0 and < 1))
            throw new ArgumentException($"An expected ICC lies in [0, 1); got {icc}.", nameof(icc));
    }
}
