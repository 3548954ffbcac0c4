using SwingStudy.Motion.Tests.Support;
using SwingStudy.Pipeline.Measure.Recordings;

namespace SwingStudy.Pipeline.Tests.Measure;

/// <summary>Simulated sessions: triggers waver by 3 ms about a clock that is known.</summary>
public sealed class ContactClockTests
{
    private const double Jitter = 3;

    [Theory]
    // Swings, minutes, drift in millionths, late triggers.
    [InlineData(8, 10, 0, 0)]
    [InlineData(12, 10, 51, 0)]
    [InlineData(12, 10, -51, 2)]
    [InlineData(40, 30, 80, 4)]
    // Few swings in a short time would make a wild drift out of their scatter.
    [InlineData(6, 1, 30, 0)]
    [InlineData(6, 1, 30, 1)]
    public void TheLineScattersLikeThatOfLeastSquaresWithoutLateTriggers(int swings, double minutes, double driftPpm, int late)
    {
        var (squares, count, covered) = (0.0, 0, 0);
        for (var session = 1; session <= 100; session++)
        {
            var noise = new Noise(session);
            double[] contacts = [.. Enumerable.Range(0, swings).Select(i => 1.7e12 + (60_000 * minutes * i / (swings - 1)))];
            double True(double contact) => contact + 6300 + (driftPpm * 1e-6 * (contact - 1.7e12));
            var clock = ContactClock.Of([.. contacts.Select((contact, i) => (contact, True(contact) + (Jitter * noise.Next()) + (i % 5 == 3 && i / 5 < late ? 350 : 0)))])!;
            foreach (var contact in contacts)
            {
                squares += Math.Pow(clock.Map(contact) - True(contact), 2);
                count++;
            }

            covered += Math.Abs(clock.Map(clock.MiddleMillis) - True(clock.MiddleMillis)) < 3 * clock.ErrorMillis ? 1 : 0;
        }

        // Least squares of offset and drift err by σ √(2/n) over the swings themselves.
        Assert.InRange(Math.Sqrt(squares / count), 0, 1.2 * Jitter * Math.Sqrt(2.0 / (swings - late)));
        Assert.InRange(covered, 90, 100);
    }

    [Fact]
    public void TwoSwingsMakeNoClock() => Assert.Null(ContactClock.Of([(0, 5), (60_000, 60_005)]));

    [Fact]
    public void TriggersThatScatterByTensOfMillisecondsMakeNone() =>
        Assert.Null(ContactClock.Of([.. Enumerable.Range(0, 9).Select(i => (30_000.0 * i, (30_000.0 * i) + (40 * Math.Sin(i * i))))]));
}
