using SwingStudy.Statistics.Chance;
using SwingStudy.Statistics.SingleCase;
using SwingStudy.Statistics.Tests.Support;

namespace SwingStudy.Statistics.Tests.SingleCase;

public class BetweenCaseTests
{
    [Fact]
    public void AKnownEffectIsRecoveredFromManyCases()
    {
        // Between-case and within-case variance 1 each: a change of 2 is 2/√2 in total standard deviations.
        var study = Made(cases: 40, sessions: 16, change: 2, seed: 11);
        var moments = BetweenCaseMoments.MultipleBaseline(study.Cases, study.Times, study.Treated, study.Values);
        var likelihood = BetweenCaseLikelihood.MultipleBaseline(study.Cases, study.Times, study.Treated, study.Values);
        Assert.InRange(moments.Effect.Value!.Value, 1.414 - 0.35, 1.414 + 0.35);
        Assert.InRange(likelihood.Effect.Effect.Value!.Value, 1.414 - 0.35, 1.414 + 0.35);
        Assert.InRange(likelihood.Effect.IntraclassCorrelation!.Value, 0.3, 0.7);
        Assert.InRange(likelihood.Effect.Autocorrelation!.Value, -0.15, 0.15);
    }

    [Fact]
    public void UnitOffsetAndOrderOfRowsDoNotChangeTheEffect()
    {
        var study = Made(cases: 4, sessions: 10, change: 1, seed: 3);
        var plain = BetweenCaseMoments.MultipleBaseline(study.Cases, study.Times, study.Treated, study.Values);
        var plainFit = BetweenCaseLikelihood.MultipleBaseline(study.Cases, study.Times, study.Treated, study.Values);
        var values = Some.Plus(Some.Times(study.Values, 64), 4096);
        int[] cases = [.. study.Cases.Reverse()], times = [.. study.Times.Reverse()];
        bool[] treated = [.. study.Treated.Reverse()];
        var moved = BetweenCaseMoments.MultipleBaseline(cases, times, treated, Some.Backwards(values));
        var movedFit = BetweenCaseLikelihood.MultipleBaseline(cases, times, treated, Some.Backwards(values));
        Near.Equal(plain.Effect.Value, moved.Effect.Value, 1e-8);
        Near.Equal(plain.Variance, moved.Variance, 1e-8);
        Near.Equal(64 * plain.RawChange, moved.RawChange, 1e-8);
        Near.Equal(plainFit.Effect.Effect.Value, movedFit.Effect.Effect.Value, 1e-5);
    }

    [Fact]
    public void OneCaseOrAMissingPhaseOrNoScatterIsUndefinedWithItsReason()
    {
        var study = Made(cases: 1, sessions: 10, change: 1, seed: 3);
        Assert.Contains("two cases", BetweenCaseMoments.MultipleBaseline(study.Cases, study.Times, study.Treated, study.Values).Effect.Undefined, StringComparison.Ordinal);
        Assert.False(BetweenCaseMoments.MultipleBaseline([], [], [], []).Effect.IsDefined);
        Assert.False(BetweenCaseMoments.MultipleBaseline([1, 1, 2, 2], [1, 2, 1, 2], [false, true, false, false], [1, 2, 3, 4]).Effect.IsDefined);
        Assert.False(BetweenCaseLikelihood.MultipleBaseline([1, 1, 2, 2], [1, 2, 1, 2], [false, true, false, true], [5, 5, 5, 5]).Effect.Effect.IsDefined);
    }

    [Fact]
    public void TwoValuesOfACaseAtOneTimeAreRefused() => Assert.Throws<ArgumentException>(
        () => BetweenCaseMoments.MultipleBaseline([1, 1, 2, 2], [1, 1, 1, 2], [false, true, false, true], [1, 2, 3, 4]));

    private static (int[] Cases, int[] Times, bool[] Treated, double[] Values) Made(int cases, int sessions, double change, ulong seed)
    {
        var normal = new NormalStream(new Xoshiro256(seed));
        var rows = new List<(int Case, int Time, bool Treated, double Value)>();
        for (var person = 0; person < cases; person++)
        {
            var level = normal.Next();
            for (var time = 1; time <= sessions; time++)
            {
                var treated = time > (sessions / 3) + (person % 4);
                rows.Add((person, time, treated, level + normal.Next() + (treated ? change : 0)));
            }
        }

        return ([.. rows.Select(r => r.Case)], [.. rows.Select(r => r.Time)], [.. rows.Select(r => r.Treated)], [.. rows.Select(r => r.Value)]);
    }
}
