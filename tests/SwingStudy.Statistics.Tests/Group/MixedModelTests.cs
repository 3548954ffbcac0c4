using CsCheck;
using SwingStudy.Statistics.Chance;
using SwingStudy.Statistics.Distributions;
using SwingStudy.Statistics.Group;
using SwingStudy.Statistics.Reliability;

namespace SwingStudy.Statistics.Tests.Group;

public class MixedModelTests
{
    [Fact]
    public void OnBalancedDataRemlIsTheAnalysisOfVariance() => Gen.ULong.Sample(
        seed =>
        {
            var rows = Rows.Draw(seed, subjects: 6, sessions: 3, swings: 4, 3, 1.5, 1);
            var anova = NestedAnova.Of(rows.Values, rows.Subjects, rows.Sessions)!;
            if (anova.Components!.IsTruncated)
                return;
            var fit = MixedModel.FitReml(rows.Intercepts()).Fit!;
            Assert.Equal(anova.SubjectVariance!.Value, fit.SubjectVariance, 1e-5 * anova.SubjectVariance.Value);
            Assert.Equal(anova.SessionVariance!.Value, fit.SessionVariance!.Value, 1e-5 * anova.SessionVariance.Value);
            Assert.Equal(anova.TrialVariance!.Value, fit.ResidualVariance, 1e-6 * anova.TrialVariance.Value);
        },
        iter: 60);

    [Fact]
    public void OrderLabelsShiftAndUnitOfTheRowsDoNotMatter() => Gen.ULong.Sample(
        seed =>
        {
            var rows = Rows.Draw(seed, 5, 3, 4, 2, 1, 1).Without(3);
            var plain = MixedModel.FitReml(rows.WithPhase()).Fit!;
            var other = MixedModel.FitReml(rows.Changed(2, 1e6).WithPhase()).Fit!;
            Assert.Equal(2 * plain.Coefficients[1], other.Coefficients[1], 1e-6);
            Assert.Equal(4 * plain.ResidualVariance, other.ResidualVariance, 1e-5);
            Assert.Equal(2 * plain.KenwardRoger([0, 1]).StandardError!.Value, other.KenwardRoger([0, 1]).StandardError!.Value, 1e-5);
            Assert.Equal(plain.Satterthwaite([0, 1]).DegreesOfFreedom!.Value, other.Satterthwaite([0, 1]).DegreesOfFreedom!.Value, 0.01);
        },
        iter: 40);

    [Fact]
    public void NoVarianceRatioMakesItLoseItsDigits()
    {
        // Subjects a million times as variable as swings: the sum of squares within sessions must still come out right.
        var rows = Rows.Draw(5, 6, 3, 4, 1e6, 1e3, 1);
        var fit = MixedModel.FitReml(rows.Intercepts()).Fit!;
        var anova = NestedAnova.Of(rows.Values, rows.Subjects, rows.Sessions)!;
        Assert.Equal(1, fit.ResidualVariance / anova.TrialVariance!.Value, 1e-6);
        Assert.Equal(1, fit.SessionVariance!.Value / anova.SessionVariance!.Value, 1e-4);
        Assert.Equal(1, fit.SubjectVariance / anova.SubjectVariance!.Value, 1e-4);
    }

    [Fact]
    public void PredictedSubjectsAreShrunkMeans()
    {
        // Balanced, no sessions: the prediction is n ratio/(1 + n ratio) times the deviation of the subject's mean from the grand mean.
        var rows = Rows.Draw(9, 5, 1, 6, 2, 0, 1);
        var data = MixedModelData.Of(rows.Values, [("intercept", rows.Ones)], rows.Subjects);
        var fit = MixedModel.FitReml(data).Fit!;
        var shrink = 6 * fit.SubjectVariance / (fit.ResidualVariance + (6 * fit.SubjectVariance));
        var predicted = fit.PredictRandomEffects().Intercepts;
        for (var s = 0; s < 5; s++)
            Assert.Equal(shrink * (rows.Values.Skip(6 * s).Take(6).Average() - rows.Values.Average()), predicted[s], 8);
        Assert.Equal(0, predicted.Sum(), 8);
    }

    [Theory]
    [InlineData(1, 3, 4, "needs at least 2 subjects, got 1")]
    [InlineData(4, 1, 4, "needs a subject with 2 sessions")]
    [InlineData(4, 3, 1, "needs a session with 2 values")]
    public void ADesignThatCannotTellTheLevelsApartIsUndefined(int subjects, int sessions, int swings, string reason) =>
        Assert.Equal(reason, MixedModel.FitReml(Rows.Draw(1, subjects, sessions, swings, 1, 1, 1).Intercepts()).Undefined);

    [Fact]
    public void WithoutErrorThereIsNothingToJudgeBy() =>
        Assert.NotNull(MixedModel.FitReml(Rows.Draw(1, 4, 3, 4, 1, 1, 0).Intercepts()).Undefined);

    [Fact]
    public void CollinearFixedEffectsAreRefused()
    {
        var rows = Rows.Draw(1, 4, 3, 4, 1, 1, 1);
        var data = MixedModelData.Of(rows.Values, [("intercept", rows.Ones), ("again", [.. rows.Ones.Select(_ => 2.0)])], rows.Subjects, rows.Sessions);
        Assert.Throws<ArgumentException>(() => MixedModel.FitReml(data));
    }

    [Fact]
    public void AnMlFitHasNoKenwardRogerTest() =>
        Assert.False(MixedModel.FitMl(Rows.Draw(1, 4, 3, 4, 1, 1, 1).Intercepts()).Fit!.KenwardRoger([1]).IsDefined);

    [Fact]
    public void AVarianceThatRunsIntoZeroIsStatedAsSingular()
    {
        // Every session mean is zero: sessions vary less than swings alone would make them.
        double[] values = [.. Enumerable.Range(0, 24).Select(i => (i % 2 == 0 ? 1.0 : -1) * (1 + (i % 5)))];
        for (var i = 1; i < values.Length; i += 2)
            values[i] = -values[i - 1];
        var data = MixedModelData.Of(
            values, [("intercept", [.. values.Select(_ => 1.0)])], values.Select((_, i) => i / 8).ToArray(), values.Select((_, i) => i / 4 % 2).ToArray());
        var fit = MixedModel.FitReml(data).Fit!;
        Assert.True(fit.IsSingular);
        Assert.Equal(0, fit.SessionVariance!.Value, 1e-8);
        Assert.True(fit.Components!.IsTruncated);
        Assert.NotNull(fit.Satterthwaite([1]).Interval);
    }

    private sealed record Rows(double[] Values, int[] Subjects, int[] Sessions)
    {
        public double[] Ones => [.. Values.Select(_ => 1.0)];

        public static Rows Draw(ulong seed, int subjects, int sessions, int swings, double subjectSd, double sessionSd, double swingSd)
        {
            var random = new Xoshiro256(seed);
            double Draw() => Normal.Quantile(Math.Max(random.NextUnit(), 1e-12));
            var (values, who, when) = (new List<double>(), new List<int>(), new List<int>());
            for (var p = 0; p < subjects; p++)
            {
                var level = 100 + (subjectSd * Draw());
                for (var s = 0; s < sessions; s++)
                {
                    var day = level + (sessionSd * Draw());
                    for (var k = 0; k < swings; k++)
                    {
                        values.Add(day + (swingSd * Draw()));
                        who.Add(p);
                        when.Add(s);
                    }
                }
            }

            return new Rows([.. values], [.. who], [.. when]);
        }

        public Rows Without(int every) => Select([.. Enumerable.Range(0, Values.Length).Where(i => (i * i) % 7 != every)]);

        public Rows Changed(double scale, double shift)
        {
            var reversed = Select([.. Enumerable.Range(0, Values.Length).Reverse()]);
            return new Rows(
                [.. reversed.Values.Select(x => (scale * x) + shift)], [.. reversed.Subjects.Select(s => 50 - s)], [.. reversed.Sessions.Select(s => s + 3)]);
        }

        public MixedModelData Intercepts() => MixedModelData.Of(Values, [("intercept", Ones)], Subjects, Sessions);

        public MixedModelData WithPhase()
        {
            var last = Sessions.Max();
            return MixedModelData.Of(Values, [("intercept", Ones), ("phase", [.. Sessions.Select(s => s == last ? 1.0 : 0)])], Subjects, Sessions);
        }

        private Rows Select(int[] kept) => new([.. kept.Select(i => Values[i])], [.. kept.Select(i => Subjects[i])], [.. kept.Select(i => Sessions[i])]);
    }
}
