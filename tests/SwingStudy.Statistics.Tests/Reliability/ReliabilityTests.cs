using CsCheck;
using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Reliability;

namespace SwingStudy.Statistics.Tests.Reliability;

public class ReliabilityTests
{
    private static readonly Gen<(double[] Values, int Trials)> Tables =
        Gen.Select(Gen.Int[2, 5], Gen.Int[3, 8]).SelectMany((k, n) => Gen.Double[10, 60].Array[n * k].Select(v => (v, k)));

    [Fact]
    public void ShiftScaleAndOrderOfSubjectsLeaveEveryIccAlone() => Tables.Sample(drawn =>
    {
        var (values, k) = drawn;
        var moved = values.Chunk(k).Reverse().SelectMany(row => row).Select(x => (3 * x) + 1000).ToArray();
        var (table, other) = (TrialTable.Of(values, k), TrialTable.Of(moved, k));
        Assert.Equal(IntraclassCorrelation.Icc11(table).Value!.Value, IntraclassCorrelation.Icc11(other).Value!.Value, 1e-9);
        Assert.Equal(IntraclassCorrelation.Icc21(table).Value!.Value, IntraclassCorrelation.Icc21(other).Value!.Value, 1e-9);
        Assert.Equal(IntraclassCorrelation.Icc31(table).Value!.Value, IntraclassCorrelation.Icc31(other).Value!.Value, 1e-9);
        Assert.Equal(3 * MeasurementError.Typical(table).Value!.Value, MeasurementError.Typical(other).Value!.Value, 1e-9);
    });

    [Fact]
    public void AMeanOfTrialsIsTheSpearmanBrownOfOne() => Tables.Sample(drawn =>
    {
        var table = TrialTable.Of(drawn.Values, drawn.Trials);
        var single = IntraclassCorrelation.Icc31(table).Value!.Value;
        if (SpearmanBrown.OfMean(single, drawn.Trials).Value is { } stepped && Math.Abs(stepped) < 1e6)
            Assert.Equal(stepped, IntraclassCorrelation.Icc3k(table).Value!.Value, 1e-7 * (1 + Math.Abs(stepped)));
    });

    [Fact]
    public void IntervalsHoldTheirIcc() => Tables.Sample(drawn =>
    {
        var table = TrialTable.Of(drawn.Values, drawn.Trials);
        foreach (var icc in new[] { IntraclassCorrelation.Icc11(table), IntraclassCorrelation.Icc21(table), IntraclassCorrelation.Icc31(table) })
            Assert.True(icc.Interval is not { } interval || interval.Contains(icc.Value!.Value), icc.ToString());
    });

    [Fact]
    public void WithTwoTrialsTheTypicalErrorIsTheSpreadOfDifferencesOverRootTwo()
    {
        var table = TrialTable.Of([10, 12, 20, 19, 30, 34, 25, 26], 2);
        var repeat = Repeatability.Of([10, 20, 30, 25], [12, 19, 34, 26])!;
        Assert.Equal(repeat.WithinSubjectBiasRemoved!.Value, MeasurementError.Typical(table).Value!.Value, 12);
        Assert.Equal(repeat.WithinSubject, MeasurementError.Agreement(table).Value!.Value, 12);
    }

    [Fact]
    public void PerfectlyRepeatedTrialsAreReliableWithoutAnInterval()
    {
        var table = TrialTable.Of([1, 1, 2, 2, 5, 5], 2);
        Assert.Equal(1, IntraclassCorrelation.Icc21(table).Value);
        Assert.Null(IntraclassCorrelation.Icc21(table).Interval);
        Assert.Equal(0, MeasurementError.Typical(table).Value);
    }

    [Fact]
    public void AdditiveDataHaveNoErrorInSpiteOfRounding() =>
        Assert.Equal(0, TrialTable.Of([0.1, 0.3, 1.1, 1.3, 2.1, 2.3, 3.1, 3.3], 2).ErrorSumOfSquares);

    [Fact]
    public void ATableWithGapsIsRefused() => Assert.Throws<ArgumentException>(() => TrialTable.Of([1, 2, 3, 4, 5], 2));

    [Fact]
    public void NestedSumsOfSquaresAddUpAndLabelsDoNotMatter() => Gen.Double[0, 10].Array[12, 60].Sample(values =>
    {
        int[] subjects = [.. values.Select((_, i) => i % 3)], sessions = [.. values.Select((_, i) => i / 3 % 2)];
        var anova = NestedAnova.Of(values, subjects, sessions)!;
        var relabelled = NestedAnova.Of(values, subjects.Select(s => 90 - s).ToArray(), sessions.Select(s => 7 - s).ToArray())!;
        var total = Summary.Of(values).SumOfSquares;
        Assert.Equal(total, anova.SumsOfSquares.Subject + anova.SumsOfSquares.Session + anova.SumsOfSquares.Trial, 1e-8);
        Assert.Equal(anova.SessionVariance!.Value, relabelled.SessionVariance!.Value, 1e-10);
        Assert.Equal(anova.SubjectVariance!.Value, relabelled.SubjectVariance!.Value, 1e-10);
    });

    [Fact]
    public void ANegativeComponentIsStatedAsZeroAndSaidToBeCut()
    {
        double[] values = [1, 9, 2, 8, 1.5, 8.5, 11, 19, 12, 18, 11, 20];
        int[] subjects = [0, 0, 0, 0, 0, 0, 1, 1, 1, 1, 1, 1], sessions = [0, 0, 1, 1, 2, 2, 0, 0, 1, 1, 2, 2];
        var anova = NestedAnova.Of(values, subjects, sessions)!;
        Assert.True(anova.SessionVariance < 0);
        Assert.Equal(0, anova.Components!.Session);
        Assert.True(anova.Components.IsTruncated);
    }

    [Fact]
    public void SessionsAndSwingsNeededReachTheTarget()
    {
        var components = new VarianceComponents("given", 4, 1, 3, false);
        Assert.Equal(0.9, components.Reliability(components.SessionsNeeded(0.9, 10)!.Value, 10)!.Value, 12);
        Assert.Equal(0.9, components.Reliability(3, components.SwingsNeeded(0.9, 3)!.Value)!.Value, 12);

        // The target needs an error of 4/9, but in two sessions session variance alone leaves 1/2.
        Assert.Null(components.SwingsNeeded(0.9, 2));
    }

    [Fact]
    public void SwappingSourcesMirrorsTheLimitsOfAgreement() => Gen.Double[1, 9].Array[12].Sample(values =>
    {
        var (x, y) = (values[..6], values[6..]);
        var (there, back) = (BlandAltman.Of(x, y)!, BlandAltman.Of(y, x)!);
        Assert.Equal(there.Lower.Value!.Value, -back.Upper.Value!.Value, 1e-12);
        Assert.Equal(Concordance.Of(x, y)!.Coefficient.Value!.Value, Concordance.Of(y, x)!.Coefficient.Value!.Value, 1e-12);
    });
}
