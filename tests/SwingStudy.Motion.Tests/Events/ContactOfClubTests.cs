using SwingStudy.Motion.Events;
using SwingStudy.Motion.Tests.Support;

namespace SwingStudy.Motion.Tests.Events;

/// <summary>Contact in invented swings: time zero, where the club loses part of its turn.</summary>
public class ContactOfClubTests
{
    [Theory]
    // The crossing of two curves scatters by their end scatter over the loss of turn, some 7 rad/s: 0.05 to 0.3 ms here; three of that are allowed, with 0.1 ms for what bends otherwise.
    [InlineData(200, 0.0006, 0.0007)]
    [InlineData(240, 0.0003, 0.0004)]
    [InlineData(500, 0.0003, 0.0003)]
    [InlineData(500, 0.001, 0.0007)]
    public void AMarkThatIsEarlyOrLateIsSetRight(double rate, double noise, double tolerance)
    {
        var swing = new InventedSwing();
        for (var seed = 1; seed <= 16; seed++)
        {
            // From 5 ms early to 6 ms late, with contact anywhere between samples.
            var marked = 0.001 * (seed - 8) * 0.7;
            var contact = Near(swing, rate, noise, seed, marked);
            Assert.NotNull(contact);
            Assert.Equal(0, contact.TimeS, tolerance);
            Assert.InRange(contact.ScatterS, 0, 0.0005);
        }
    }

    [Theory]
    [InlineData(200, 0.0006)]
    [InlineData(500, 0.0003)]
    public void ASwingWithoutBallHasNoBreak(double rate, double noise)
    {
        for (var seed = 1; seed <= 16; seed++)
            Assert.Null(Near(new InventedSwing { LostAtImpact = 0 }, rate, noise, seed, 0.0002 * (seed - 8)));
    }

    [Fact]
    public void NoiseThatHidesTheBreakLeavesTheMark() => Assert.Null(Near(new InventedSwing(), 240, 0.01, 1, 0.001));

    [Fact]
    public void AMarkFarFromTheBreakStays() => Assert.Null(Near(new InventedSwing(), 240, 0.0003, 1, 0.03));

    private static ContactOfClub? Near(InventedSwing swing, double rate, double noise, int seed, double marked)
    {
        var phase = seed / 16.0 / rate;
        return ContactOfClub.Near(
            InventedSwing.Seen(swing.Grip, rate, noise, seed, phaseS: phase), InventedSwing.Seen(swing.Head, rate, noise, 500 + seed, phaseS: phase), marked);
    }
}
