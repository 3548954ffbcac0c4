using SwingStudy.Statistics.Description;

namespace SwingStudy.Statistics.Reliability;

/// <summary>The nested analysis of variance of trials in sessions in subjects, balanced or not.</summary>
/// <remarks>
/// y = μ + subject + session(subject) + trial. Expected mean squares: E[MS session] = σ_e² + k₁ σ_s²; E[MS subject] = σ_e² + k₂ σ_s² + k₃ σ_p²;
/// k₁ = (N − Σ_i Σ_j n_ij²/n_i)/(b − a), k₂ = (Σ_i Σ_j n_ij²/n_i − Σ n_ij²/N)/(a − 1), k₃ = (N − Σ n_i²/N)/(a − 1).
/// Source: Searle (1971), Linear Models, ch. 11.
/// </remarks>
/// <param name="Count">Number of values N.</param>
/// <param name="Subjects">Number of subjects a.</param>
/// <param name="Sessions">Number of sessions b.</param>
/// <param name="DegreesOfFreedom">a − 1, b − a, N − b.</param>
/// <param name="SumsOfSquares">Of subjects, sessions in subjects, trials in sessions.</param>
/// <param name="Coefficients">k₁, k₂, k₃; 0 where a level has no degree of freedom.</param>
public sealed record NestedAnova(
    int Count,
    int Subjects,
    int Sessions,
    (int Subject, int Session, int Trial) DegreesOfFreedom,
    (double Subject, double Session, double Trial) SumsOfSquares,
    (double K1, double K2, double K3) Coefficients)
{
    /// <summary>Mean square of subjects; null with one subject.</summary>
    public double? SubjectMeanSquare => DegreesOfFreedom.Subject > 0 ? SumsOfSquares.Subject / DegreesOfFreedom.Subject : null;

    /// <summary>Mean square of sessions in subjects; null when no subject has a second session.</summary>
    public double? SessionMeanSquare => DegreesOfFreedom.Session > 0 ? SumsOfSquares.Session / DegreesOfFreedom.Session : null;

    /// <summary>Mean square of trials in sessions; null when no session has a second trial.</summary>
    public double? TrialMeanSquare => DegreesOfFreedom.Trial > 0 ? SumsOfSquares.Trial / DegreesOfFreedom.Trial : null;

    /// <summary>σ_e² by the analysis of variance; null when not estimable.</summary>
    public double? TrialVariance => TrialMeanSquare;

    /// <summary>σ_s² by the analysis of variance, not cut at zero; null when not estimable.</summary>
    public double? SessionVariance => (SessionMeanSquare - TrialMeanSquare) / Coefficients.K1;

    /// <summary>σ_p² by the analysis of variance, not cut at zero; null when not estimable.</summary>
    public double? SubjectVariance =>
        (SubjectMeanSquare - TrialMeanSquare - (Coefficients.K2 * SessionVariance)) / Coefficients.K3;

    /// <summary>The components with negative estimates cut at zero; null when a level is not estimable.</summary>
    public VarianceComponents? Components => SubjectVariance is { } p && SessionVariance is { } s && TrialVariance is { } e
        ? new VarianceComponents("variance-components-anova", Math.Max(0, p), Math.Max(0, s), e, p < 0 || s < 0)
        : null;

    /// <summary>Analyses values with their subject and session.</summary>
    /// <param name="values">All values, all finite.</param>
    /// <param name="subjects">0-based subject of each value.</param>
    /// <param name="sessions">Session of each value, unique within subject.</param>
    /// <returns>The analysis, or null without values.</returns>
    /// <exception cref="ArgumentException">The lengths differ or a value is not finite.</exception>
    public static NestedAnova? Of(ReadOnlySpan<double> values, ReadOnlySpan<int> subjects, ReadOnlySpan<int> sessions)
    {
        if (values.Length != subjects.Length || values.Length != sessions.Length)
            throw new ArgumentException($"Columns need equal lengths; got {values.Length}, {subjects.Length} and {sessions.Length}.", nameof(values));
        var cells = CellIndex(subjects, sessions);
        if (OneWayAnova.Of(values, subjects) is not { } outer || OneWayAnova.Of(values, cells) is not { } inner)
            return null;
        var (a, b, n) = (outer.BetweenDegreesOfFreedom + 1, inner.BetweenDegreesOfFreedom + 1, values.Length);
        return new NestedAnova(
            n,
            a,
            b,
            (a - 1, b - a, n - b),
            (outer.BetweenSumOfSquares, SessionsInSubjects(values, subjects, cells), inner.WithinSumOfSquares),
            ExpectedCoefficients(subjects, cells, a, b));
    }

    /// <summary>0-based number of each (subject, session).</summary>
    internal static int[] CellIndex(ReadOnlySpan<int> subjects, ReadOnlySpan<int> sessions)
    {
        var numbers = new Dictionary<(int, int), int>();
        var cells = new int[subjects.Length];
        for (var i = 0; i < cells.Length; i++)
        {
            if (!numbers.TryGetValue((subjects[i], sessions[i]), out var number))
                numbers[(subjects[i], sessions[i])] = number = numbers.Count;
            cells[i] = number;
        }

        return cells;
    }

    /// <summary>Σ n_ij (session mean − subject mean)², summed directly: a difference of two sums would lose digits.</summary>
    private static double SessionsInSubjects(ReadOnlySpan<double> values, ReadOnlySpan<int> subjects, int[] cells)
    {
        var origin = values[0];
        var bySubject = new Dictionary<int, (CompensatedSum Sum, int Count)>();
        var byCell = new Dictionary<int, (CompensatedSum Sum, int Count, int Subject)>();
        for (var i = 0; i < values.Length; i++)
        {
            var subject = bySubject.GetValueOrDefault(subjects[i]);
            subject.Sum.Add(values[i] - origin);
            bySubject[subjects[i]] = (subject.Sum, subject.Count + 1);
            var cell = byCell.GetValueOrDefault(cells[i]);
            cell.Sum.Add(values[i] - origin);
            byCell[cells[i]] = (cell.Sum, cell.Count + 1, subjects[i]);
        }

        var total = new CompensatedSum();
        foreach (var cell in byCell.Values)
        {
            var subject = bySubject[cell.Subject];
            var deviation = (cell.Sum.Value / cell.Count) - (subject.Sum.Value / subject.Count);
            total.Add(cell.Count * deviation * deviation);
        }

        return total.Value;
    }

    private static (double K1, double K2, double K3) ExpectedCoefficients(ReadOnlySpan<int> subjects, int[] cells, int a, int b)
    {
        double n = cells.Length;
        var perSubject = new Dictionary<int, double>();
        var perCell = new Dictionary<int, (double Count, int Subject)>();
        for (var i = 0; i < cells.Length; i++)
        {
            perSubject[subjects[i]] = perSubject.GetValueOrDefault(subjects[i]) + 1;
            perCell[cells[i]] = (perCell.GetValueOrDefault(cells[i]).Count + 1, subjects[i]);
        }

        var withinSubjects = perCell.Values.Sum(c => c.Count * c.Count / perSubject[c.Subject]);
        var overall = perCell.Values.Sum(c => c.Count * c.Count) / n;
        var subjectSquares = perSubject.Values.Sum(c => c * c) / n;
        return (
            b > a ? (n - withinSubjects) / (b - a) : 0,
            a > 1 ? (withinSubjects - overall) / (a - 1) : 0,
            a > 1 ? (n - subjectSquares) / (a - 1) : 0);
    }
}
