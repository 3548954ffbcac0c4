using SwingStudy.Statistics.Change;
using SwingStudy.Statistics.Distributions;
using SwingStudy.Statistics.Tests.Support;

namespace SwingStudy.Statistics.Tests.Change;

public class BaselineSlopeTests
{
    [Fact]
    public void TheErrorComesFromTheNoiseThatTheStudyKnows()
    {
        // Session means 40, 41, 42 before: slope 1. Var(mean) is about 0.25 + 0 with a session SD of 0.5 known without error and no swing scatter; by hand
        // SE = 0.5/√2, and the normal limit of 1.96 SE.
        var noise = new StudyNoise { SessionStandardDeviation = 0.5, SessionDegreesOfFreedom = 1e9, SwingStandardDeviation = 1e-9, SwingDegreesOfFreedom = 1e9 };
        var data = new ChangeData([[40], [41], [42]], [[44], [45]], 0);
        var slope = BaselineSlope.Of(data, HonestChangeRule.Judge(data, noise));
        Near.Equal(1, slope.Value);
        Near.Equal(0.5 / Math.Sqrt(2), slope.StandardError, 1e-6);
        Near.Equal(2 * Normal.UpperTail(Math.Sqrt(2) / 0.5), slope.P, 1e-5);
    }

    [Fact]
    public void TwoSessionsShowNoSlopeAndUnknownNoiseGivesNoError()
    {
        var two = new ChangeData([[40, 41], [41, 42]], [[44, 45], [45, 46]], 0);
        Assert.NotNull(BaselineSlope.Of(two, HonestChangeRule.Judge(two, StudyNoise.Unknown)).Undefined);
        var single = new ChangeData([[40], [41], [42]], [[44]], 0);
        var slope = BaselineSlope.Of(single, HonestChangeRule.Judge(single, StudyNoise.Unknown));
        Near.Equal(1, slope.Value);
        Assert.Null(slope.P);
    }
}
