using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Distributions;

namespace SwingStudy.Statistics.Reliability;

/// <summary>The two-way analysis of variance of a complete table: n subjects (rows) by k trials (columns), one value a cell.</summary>
/// <remarks>Source: Shrout and Fleiss (1979), Psychological Bulletin 86:420–428.</remarks>
/// <param name="Subjects">n.</param>
/// <param name="Trials">k.</param>
/// <param name="GrandMean">Mean of all n k values.</param>
/// <param name="SubjectSumOfSquares">k Σ (row mean − grand mean)².</param>
/// <param name="TrialSumOfSquares">n Σ (column mean − grand mean)².</param>
/// <param name="ErrorSumOfSquares">Σ (value − row mean − column mean + grand mean)².</param>
public sealed record TrialTable(
    int Subjects, int Trials, double GrandMean, double SubjectSumOfSquares, double TrialSumOfSquares, double ErrorSumOfSquares)
{
    /// <summary>n − 1.</summary>
    public int SubjectDegreesOfFreedom => Subjects - 1;

    /// <summary>k − 1.</summary>
    public int TrialDegreesOfFreedom => Trials - 1;

    /// <summary>(n − 1)(k − 1).</summary>
    public int ErrorDegreesOfFreedom => (Subjects - 1) * (Trials - 1);

    /// <summary>n (k − 1).</summary>
    public int WithinDegreesOfFreedom => Subjects * (Trials - 1);

    /// <summary>Mean square of subjects.</summary>
    public double SubjectMeanSquare => SubjectSumOfSquares / SubjectDegreesOfFreedom;

    /// <summary>Mean square of trials.</summary>
    public double TrialMeanSquare => TrialSumOfSquares / TrialDegreesOfFreedom;

    /// <summary>Mean square of what subjects and trials leave over.</summary>
    public double ErrorMeanSquare => ErrorSumOfSquares / ErrorDegreesOfFreedom;

    /// <summary>Mean square within subjects, trials and error together.</summary>
    public double WithinMeanSquare => (TrialSumOfSquares + ErrorSumOfSquares) / WithinDegreesOfFreedom;

    /// <summary>Standard deviation of all values, divisor n k − 1.</summary>
    public double TotalStandardDeviation =>
        Math.Sqrt((SubjectSumOfSquares + TrialSumOfSquares + ErrorSumOfSquares) / ((Subjects * Trials) - 1));

    /// <summary>F of trials: did the mean change from trial to trial; null when there is no error.</summary>
    public double? TrialF => ErrorMeanSquare > 0 ? TrialMeanSquare / ErrorMeanSquare : null;

    /// <summary>p of <see cref="TrialF"/>.</summary>
    public double? TrialP => TrialF is { } f ? FisherF.UpperTail(f, TrialDegreesOfFreedom, ErrorDegreesOfFreedom) : null;

    /// <summary>Analyses a table given row by row.</summary>
    /// <param name="values">n·k values, subject after subject.</param>
    /// <param name="trials">k, at least 2.</param>
    /// <exception cref="ArgumentException">The values do not fill at least 2 rows of at least 2 columns, or a value is not finite.</exception>
    public static TrialTable Of(ReadOnlySpan<double> values, int trials)
    {
        if (trials < 2 || values.Length % trials != 0 || values.Length < 2 * trials)
            throw new ArgumentException($"A table needs at least 2 full rows of at least 2 trials; got {values.Length} values in rows of {trials}.");
        Finite.Require(values, nameof(values));
        var subjects = values.Length / trials;

        // All means are taken from the first value: a large offset costs no digits.
        var origin = values[0];
        var (rows, columns, all) = (new CompensatedSum[subjects], new CompensatedSum[trials], new CompensatedSum());
        for (var i = 0; i < values.Length; i++)
        {
            rows[i / trials].Add((values[i] - origin) / trials);
            columns[i % trials].Add((values[i] - origin) / subjects);
            all.Add((values[i] - origin) / values.Length);
        }

        var grand = all.Value;
        var (subjectSum, trialSum, errorSum) = (new CompensatedSum(), new CompensatedSum(), new CompensatedSum());
        foreach (var row in rows)
            subjectSum.Add(trials * Square(row.Value - grand));
        foreach (var column in columns)
            trialSum.Add(subjects * Square(column.Value - grand));
        for (var i = 0; i < values.Length; i++)
            errorSum.Add(Square(values[i] - origin - rows[i / trials].Value - (columns[i % trials].Value - grand)));
        return new TrialTable(subjects, trials, origin + grand, subjectSum.Value, trialSum.Value, errorSum.Value).WithoutRounding();
    }

    /// <summary>Sums that only rounding left are zero: without this, additive data would seem to have some error.</summary>
    private TrialTable WithoutRounding()
    {
        var limit = 1e-28 * (SubjectSumOfSquares + TrialSumOfSquares + ErrorSumOfSquares);
        return this with
        {
            SubjectSumOfSquares = SubjectSumOfSquares > limit ? SubjectSumOfSquares : 0,
            TrialSumOfSquares = TrialSumOfSquares > limit ? TrialSumOfSquares : 0,
            ErrorSumOfSquares = ErrorSumOfSquares > limit ? ErrorSumOfSquares : 0,
        };
    }

    private static double Square(double x) => x * x;
}
