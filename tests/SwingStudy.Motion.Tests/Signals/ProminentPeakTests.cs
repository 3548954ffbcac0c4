using CsCheck;
using SwingStudy.Motion.Signals;

namespace SwingStudy.Motion.Tests.Signals;

public class ProminentPeakTests
{
    /// <summary>Samples no two neighbours of which are alike, so that no top is level.</summary>
    private static readonly Gen<double[]> Signals = Gen.Int[-6, 6].Array[0, 40].Select(steps => steps.Where((x, i) => i == 0 || x != steps[i - 1]).Select(x => (double)x).ToArray());

    [Fact]
    public void StandOutByWhatTheHigherOfTheTwoValleysLeaves() => Gen.Select(Signals, Gen.Int[0, 8]).Sample((signal, least) =>
    {
        var expected = new List<(int, double)>();
        for (var i = 1; i < signal.Length - 1; i++)
        {
            var top = signal[i];
            if (top <= signal[i - 1] || top <= signal[i + 1])
                continue;
            var before = signal[..i].Reverse().TakeWhile(x => x <= top).Min();
            var behind = signal[(i + 1)..].TakeWhile(x => x <= top).Min();
            if (top - Math.Max(before, behind) >= least)
                expected.Add((i, top - Math.Max(before, behind)));
        }

        Assert.Equal(expected, ProminentPeak.In(signal, least).Select(peak => (peak.Index, peak.Prominence)));
    });
}
