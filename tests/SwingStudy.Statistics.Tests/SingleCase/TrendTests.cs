using CsCheck;
using SwingStudy.Statistics.SingleCase;
using SwingStudy.Statistics.Tests.Support;

namespace SwingStudy.Statistics.Tests.SingleCase;

public class TrendTests
{
    [Fact]
    public void OnlyTheOrderOfTimesAndValuesMattersForMannKendall() => Some.Values(2, 14).Sample(values =>
    {
        var plain = MannKendallTrend.Of(values);
        double[] stretched = [.. values.Select((_, i) => Math.Exp(i / 3.0))];
        var other = MannKendallTrend.Of(stretched, [.. values.Select(x => (x * x * x) + 5)]);
        Assert.Equal(plain.S, other.S);
        Near.Equal(plain.Variance, other.Variance);
        Near.Equal(plain.TauB.Value, other.TauB.Value);
    });

    [Fact]
    public void ReversingTimeTurnsTheTrend() => Some.Values(2, 14).Sample(values =>
    {
        Assert.Equal(MannKendallTrend.Of(values).S, -MannKendallTrend.Of(Some.Backwards(values)).S);
        var times = Enumerable.Range(0, values.Length).Select(i => (double)i).ToArray();
        Near.Equal(-TheilSenLine.Fit(times, values).Slope.Value, TheilSenLine.Fit(times, Some.Backwards(values)).Slope.Value);
    });

    [Fact]
    public void TheExactPAgreesWithAllOrdersOfSixValues()
    {
        double[] values = [3, 1, 2, 6, 4, 5];
        var observed = Math.Abs(MannKendallTrend.Of(values).S);
        int extreme = 0, all = 0;
        Permute([.. values], 0, order =>
        {
            all++;
            extreme += Math.Abs(MannKendallTrend.Of(order).S) >= observed ? 1 : 0;
        });
        Assert.Equal(720, all);
        Near.Equal((double)extreme / all, MannKendallTrend.Of(values).PExact);
    }

    [Fact]
    public void TheVarianceWithTiesInBothAgreesWithAllOrders()
    {
        double[] times = [1, 1, 2, 3, 3, 4], values = [2, 5, 2, 7, 5, 5];
        double squares = 0;
        var all = 0;
        Permute([.. values], 0, order =>
        {
            var s = (double)MannKendallTrend.Of(times, order).S;
            squares += s * s;
            all++;
        });
        Near.Equal(squares / all, MannKendallTrend.Of(times, values).Variance);
    }

    [Fact]
    public void AStraightLineIsFoundExactlyWhateverItsOffset()
    {
        double[] times = [1, 2, 4, 5, 9], values = [.. times.Select(t => 1e9 + (2.5 * t))];
        var line = TheilSenLine.Fit(times, values);
        Near.Equal(2.5, line.Slope.Value, 1e-7);
        Near.Equal(1e9, line.Intercept.Value, 1e-12);
    }

    [Fact]
    public void OneOddValueDoesNotMoveTheTheilSenLine()
    {
        double[] times = [1, 2, 3, 4, 5, 6, 7], values = [1, 2, 3, 400, 5, 6, 7];
        Assert.Equal(1, TheilSenLine.Fit(times, values).Slope.Value);
    }

    [Fact]
    public void TooFewOrEqualValuesAreUndefinedWithTheirReason()
    {
        Assert.Null(MannKendallTrend.Of([]).TauA);
        Assert.False(MannKendallTrend.Of([5]).TauB.IsDefined);
        Assert.Null(MannKendallTrend.Of([5, 5, 5]).ZWithContinuity);
        Assert.False(TheilSenLine.Fit([1], [2]).Slope.IsDefined);
        Assert.False(TheilSenLine.Fit([3, 3], [1, 2]).Slope.IsDefined);
        Assert.Throws<ArgumentException>(() => MannKendallTrend.Of([1, 2], [1]));
    }

    [Fact]
    public void BaselineCorrectionRemovesALineThatGoesOn()
    {
        double[] baseline = [1, 2, 3, 4, 5, 6], after = [7, 8, 9, 10, 11];
        var tau = BaselineCorrectedTau.Of(baseline, after);
        Assert.All(tau.Residuals, residual => Assert.Equal(0, residual, 9));
        Assert.False(tau.Corrected.IsDefined);
        Assert.InRange(tau.Uncorrected.Value!.Value, 0.7, 1);
        Assert.Same(tau.Corrected, tau.Chosen);
    }

    [Fact]
    public void BaselineCorrectedTauIsUnchangedByUnitAndOffset() => Gen.Select(Some.Values(3, 8), Some.Values(2, 8)).Sample(phases =>
    {
        var (a, b) = phases;
        var plain = BaselineCorrectedTau.Of(a, b).Corrected;
        Near.Equal(plain.Value, BaselineCorrectedTau.Of(Some.Times(a, 1e-6), Some.Times(b, 1e-6)).Corrected.Value);
        Near.Equal(plain.Value, BaselineCorrectedTau.Of(Some.Plus(Some.Times(a, 10), 40), Some.Plus(Some.Times(b, 10), 40)).Corrected.Value);
    });

    private static void Permute(double[] values, int from, Action<double[]> visit)
    {
        if (from == values.Length)
        {
            visit(values);
            return;
        }

        for (var i = from; i < values.Length; i++)
        {
            (values[from], values[i]) = (values[i], values[from]);
            Permute(values, from + 1, visit);
            (values[from], values[i]) = (values[i], values[from]);
        }
    }
}
