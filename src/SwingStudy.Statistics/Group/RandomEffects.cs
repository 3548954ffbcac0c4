namespace SwingStudy.Statistics.Group;

/// <summary>Predicted random effects.</summary>
/// <param name="Intercepts">One a subject, in order of first appearance.</param>
/// <param name="Slopes">One a subject; empty without random slopes.</param>
/// <param name="SessionIntercepts">One a session, in order of first appearance; empty without sessions.</param>
public sealed record RandomEffects(IReadOnlyList<double> Intercepts, IReadOnlyList<double> Slopes, IReadOnlyList<double> SessionIntercepts)
{
    /// <summary>Ψ Z' V⁻¹ (y − X β), a subject at a time.</summary>
    /// <remarks>Source: Pinheiro and Bates (2000), sec. 2.2.1.</remarks>
    internal static RandomEffects Of(MixedModelFit fit)
    {
        var data = fit.Data;
        var designs = SubjectDesign.Of(fit);
        var (intercepts, slopes) = (new double[data.SubjectCount], new double[fit.HasSlope ? data.SubjectCount : 0]);
        var sessions = new double[data.SessionCount];
        var residuals = new double[data.SubjectCount][];
        for (var s = 0; s < residuals.Length; s++)
            residuals[s] = new double[designs[s].Width];
        for (var i = 0; i < data.Count; i++)
        {
            var residual = data.Values[i] - fit.Centre;
            for (var c = 0; c < data.FixedColumns.Length; c++)
                residual -= data.FixedColumns[c][i] * fit.CentredCoefficients[c];
            designs[data.Subjects[i]].AddRandomRow(residuals[data.Subjects[i]], data, i, fit.SlopeScale, residual);
        }

        for (var s = 0; s < residuals.Length; s++)
        {
            var effects = designs[s].Predict(residuals[s]);
            intercepts[s] = effects[0];
            if (fit.HasSlope)
                slopes[s] = effects[1] / fit.SlopeScale;
            foreach (var (session, column) in designs[s].SessionColumns)
                sessions[session] = effects[column];
        }

        return new RandomEffects(intercepts, slopes, sessions);
    }
}
