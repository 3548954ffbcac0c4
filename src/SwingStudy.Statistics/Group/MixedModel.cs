namespace SwingStudy.Statistics.Group;

/// <summary>Linear mixed models by restricted or full maximum likelihood.</summary>
/// <remarks>
/// Profiled likelihood over relative standard deviations θ = SD/σ (a Cholesky factor for intercept and slope), minimised by Newton steps from the
/// best point of a coarse grid. Variances are constrained to 0 or more. Sources: Pinheiro and Bates (2000), Mixed-Effects Models in S and
/// S-PLUS, ch. 2; Laird and Ware (1982), Biometrics 38:963–974.
/// </remarks>
public static class MixedModel
{
    private const double Farthest = 1e12;

    private static readonly double[] Scales = [0, 0.03, 0.1, 0.3, 1, 3, 10, 30, 100, 1000];
    private static readonly double[] CoarseScales = [0.05, 0.2, 0.6, 2, 8];

    /// <summary>Fits by restricted maximum likelihood (REML).</summary>
    /// <exception cref="ArgumentException">The fixed effects are collinear.</exception>
    public static MixedModelOutcome FitReml(MixedModelData data) => Fit(data, isRestricted: true);

    /// <summary>Fits by full maximum likelihood (ML): for comparing fixed effects; its variances are biased down.</summary>
    /// <exception cref="ArgumentException">The fixed effects are collinear.</exception>
    public static MixedModelOutcome FitMl(MixedModelData data) => Fit(data, isRestricted: false);

    /// <summary>Whether one fixed effect is a combination of the others, which the fits refuse.</summary>
    internal static bool IsCollinear(MixedModelData data)
    {
        var centre = MixedModelBlocks.CentreOf(data).Centre;
        MixedModelBlocks blocks = data.Slope is null ? new NestedBlocks(data, centre) : new SlopeBlocks(data, centre, 1);
        return new Likelihood(blocks, isRestricted: true).IsCollinearAt(new double[blocks.Parameters]);
    }

    private static MixedModelOutcome Fit(MixedModelData data, bool isRestricted)
    {
        if (Unsupported(data) is { } reason)
            return MixedModelOutcome.NotDefined(reason);
        var (centre, interceptColumn) = MixedModelBlocks.CentreOf(data);
        var slopeScale = data.Slope is { } slope ? Math.Sqrt(slope.Sum(x => x * x / slope.Length)) : 1;
        if (!(slopeScale > 0))
            return MixedModelOutcome.NotDefined("the predictor of the random slope never varies");
        MixedModelBlocks blocks = data.Slope is null ? new NestedBlocks(data, centre) : new SlopeBlocks(data, centre, slopeScale);
        var likelihood = new Likelihood(blocks, isRestricted);
        var origin = new double[blocks.Parameters];
        var plain = likelihood.Solve(origin).Squares;

        // With variances beyond measure only the scatter within groups is left; with slopes it comes out of a subtraction.
        Array.Fill(origin, data.Slope is null ? 1e12 : 1e7);
        var rounding = data.Slope is null ? 1e-22 : 1e-13;
        if (likelihood.IsCollinearAt(origin))
            return MixedModelOutcome.NotDefined("the fixed effects cannot be told apart within the groups");
        if (!(plain > 0) || !(likelihood.Solve(origin).Squares > rounding * plain))
            return MixedModelOutcome.NotDefined("nothing varies within the groups: there is no error to judge by");
        var (theta, hasConverged) = Minimise(likelihood, data.Slope is not null);
        return new MixedModelOutcome(
            new MixedModelFit(data, likelihood, theta, hasConverged, isRestricted, centre, interceptColumn, slopeScale), null);
    }

    private static string? Unsupported(MixedModelData data)
    {
        if (data.SubjectCount < 2)
            return $"needs at least 2 subjects, got {data.SubjectCount}";
        if (data.Sessions is null)
            return data.SubjectCount < data.Count ? null : "needs a subject with 2 values";
        if (data.SessionCount == data.Count)
            return "needs a session with 2 values";
        return data.SubjectCount < data.SessionCount ? null : "needs a subject with 2 sessions";
    }

    private static (double[] Theta, bool HasConverged) Minimise(Likelihood likelihood, bool hasSlope)
    {
        // A Newton step may leap to where θ² is no number any more; nothing lies out there.
        double Function(ReadOnlySpan<double> x) => x.ContainsAnyExceptInRange(-Farthest, Farthest) ? double.PositiveInfinity : likelihood.Deviance(x);
        var (theta, hasConverged) = SmoothMinimum.From(Function, Grid(likelihood, hasSlope));

        // A zero variance is a stationary point in θ whether or not it is the minimum: step off it to see.
        for (var i = 0; i < theta.Length; i++)
        {
            if (Math.Abs(theta[i]) > 0.02)
                continue;
            var zero = (double[])theta.Clone();
            zero[i] = 0;
            var off = (double[])zero.Clone();
            off[i] = 0.03;
            if (Function(off) < Function(zero) - 1e-9)
                (theta, hasConverged) = SmoothMinimum.From(Function, off);
            else if (IsScale(i, hasSlope) && Function(zero) <= Function(theta) + 1e-7)
                theta = zero;
        }

        return (Canonical(theta, hasSlope), hasConverged);
    }

    private static bool IsScale(int i, bool hasSlope) => !hasSlope || i != 1;

    /// <summary>θ and the factor with a column's sign turned mean the same: the diagonal is stated as 0 or more.</summary>
    private static double[] Canonical(double[] theta, bool hasSlope)
    {
        if (!hasSlope)
            return [.. theta.Select(Math.Abs)];
        var first = theta[0] < 0 ? -1 : 1;
        return [.. theta.Select((x, i) => i switch { 0 or 1 => first * x, _ => Math.Abs(x) })];
    }

    private static double[] Grid(Likelihood likelihood, bool hasSlope)
    {
        var best = (Value: double.PositiveInfinity, Point: Array.Empty<double>());
        foreach (var point in Points(likelihood.Parameters, hasSlope))
        {
            var value = likelihood.Deviance(point);
            if (value < best.Value)
                best = (value, point);
        }

        // Exactly zero is a stationary point: start a little beside it.
        return [.. best.Point.Select((x, i) => x == 0 && IsScale(i, hasSlope) ? 0.01 : x)];
    }

    private static IEnumerable<double[]> Points(int parameters, bool hasSlope) => (parameters, hasSlope) switch
    {
        (1, false) => Scales.Select(a => new[] { a }),
        (_, false) => Scales.SelectMany(a => Scales.Select(b => new[] { a, b })),
        (3, _) => Scales.SelectMany(a => Scales.Select(b => new[] { a, 0, b })),
        _ => CoarseScales.SelectMany(a => CoarseScales.SelectMany(b => CoarseScales.Select(c => new[] { a, 0, b, c }))),
    };
}
