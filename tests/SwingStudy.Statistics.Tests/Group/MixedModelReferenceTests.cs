using SwingStudy.Statistics.Group;

namespace SwingStudy.Statistics.Tests.Group;

/// <summary>
/// Unbalanced made-up data (6 players, 4 sessions of 2 to 4 swings, phase = sessions 3 and 4), computed with R 4.2.2: lme4 1.1-31 (nloptwrap,
/// tolerances 1e-12), lmerTest (Satterthwaite), pbkrtest (Kenward-Roger).
/// </summary>
public class MixedModelReferenceTests
{
    private static readonly double[] Y =
    [
        22.35, 22.89, 20.94, 21.34, 19.15, 19.69, 19.35, 20.83, 19.61, 19.22, 20.09, 20.99, 18.55, 19.37, 19.51, 18.63, 22.47, 20.14, 19.94, 18.82, 20.92,
        19.72, 20.81, 20.6, 19.21, 16.5, 16.87, 16.75, 15.55, 17.84, 15.53, 18.39, 19.87, 24.1, 23.17, 24.03, 22.18, 22.82, 24.66, 22.86, 22.49, 21.84,
        22.03, 21.81, 22.65, 20.87, 19.36, 20.59, 21.89, 23.74, 22.47, 23.46, 23.77, 22.62, 23.21, 22.61, 23.1, 23.52, 20.93, 21.52, 18.82, 18.25, 21.83,
        21.41, 20.5, 20.93,
    ];

    private static readonly int[] SwingsOfSessions = [3, 4, 2, 3, 4, 3, 2, 4, 2, 2, 2, 2, 3, 4, 2, 3, 4, 3, 2, 4, 2, 2, 2, 2];
    private static readonly int[] Subjects = [.. SwingsOfSessions.SelectMany((n, i) => Enumerable.Repeat(i / 4, n))];
    private static readonly int[] Sessions = [.. SwingsOfSessions.SelectMany((n, i) => Enumerable.Repeat((i % 4) + 1, n))];
    private static readonly double[] Phase = [.. Sessions.Select(s => s > 2 ? 1.0 : 0)];
    private static readonly (string, double[])[] Effects = [("intercept", [.. Y.Select(_ => 1.0)]), ("phase", Phase)];

    [Fact]
    public void NestedInterceptsMatchOtherSoftware()
    {
        var fit = MixedModel.FitReml(MixedModelData.Of(Y, Effects, Subjects, Sessions)).Fit!;
        Assert.Equal(0.991045660647, fit.SessionVariance!.Value, 1e-5);
        Assert.Equal(3.850915829528, fit.SubjectVariance, 1e-4);
        Assert.Equal(0.731670764931, fit.ResidualVariance, 1e-5);
        Assert.Equal(20.443856884679, fit.Coefficients[0], 1e-6);
        Assert.Equal(0.307089662483, fit.Coefficients[1], 1e-6);
        Assert.Equal(-107.47547783, fit.LogLikelihood, 1e-7);

        var (satterthwaite, kenwardRoger) = (fit.Satterthwaite([0, 1]), fit.KenwardRoger([0, 1]));
        Assert.Equal(0.461239973611, satterthwaite.StandardError!.Value, 1e-5);
        Assert.Equal(16.9928062090, satterthwaite.DegreesOfFreedom!.Value, 1e-3);
        Assert.Equal(5.7338096611, fit.Satterthwaite([1, 0]).DegreesOfFreedom!.Value, 1e-3);
        Assert.Equal(0.461501223926, kenwardRoger.StandardError!.Value, 1e-5);
        Assert.Equal(16.9300088103, kenwardRoger.DegreesOfFreedom!.Value, 1e-3);
        Assert.Equal(0.514749300492, kenwardRoger.P!.Value, 1e-5);
        Assert.Equal(5.7526397731, fit.KenwardRoger([1, 0]).DegreesOfFreedom!.Value, 1e-3);
    }

    /// <summary>A fit at the edge: intercepts and slopes of players are perfectly correlated.</summary>
    [Fact]
    public void SlopesBesideSessionsMatchOtherSoftwareEvenWhereTheFitIsSingular()
    {
        var fit = MixedModel.FitReml(MixedModelData.Of(Y, Effects, Subjects, Sessions, Phase)).Fit!;
        Assert.True(fit.IsSingular);
        Assert.Equal(-106.89529896, fit.LogLikelihood, 1e-6);
        Assert.Equal(0.907044684691, fit.SessionVariance!.Value, 1e-4);
        Assert.Equal(5.038742480245, fit.SubjectVariance, 1e-3);
        Assert.Equal(0.313151539371, fit.SlopeVariance!.Value, 1e-3);
        Assert.Equal(-1.256140901406, fit.InterceptSlopeCovariance!.Value, 1e-3);
        Assert.Equal(0.322272367623, fit.Coefficients[1], 1e-5);
        var kenwardRoger = fit.KenwardRoger([0, 1]);
        Assert.Equal(0.501437191077, kenwardRoger.StandardError!.Value, 1e-4);
        Assert.Equal(4.98937885131, kenwardRoger.DegreesOfFreedom!.Value, 5e-3);
    }
}
