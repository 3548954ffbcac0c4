using SwingStudy.Domain.Variables;
using SwingStudy.Reporting.Figures;
using SwingStudy.Reporting.Tests.Support;

namespace SwingStudy.Reporting.Tests.Figures;

public sealed class PlanFigureTests
{
    private static Variable Speed { get; } = Some.Dictionary["club_head_speed"];

    [Fact]
    public void ItNamesTheLinesThePlanAndTheChangeInTheUnitThatPeopleRead()
    {
        var figure = Draw();

        foreach (var text in new[] { "2 sessions a phase", "8 sessions a phase", "planned: 2 sessions of 12 swings", "Swings a session", "mph" })
            Assert.Contains(text, figure.Svg, StringComparison.Ordinal);
        Assert.Contains("can be told from noise; 2.00 mph is to be found", figure.AltText, StringComparison.Ordinal);
        Assert.NotEmpty(figure.Png);
    }

    [Fact]
    public void ItIsTheSameEachTime() => Assert.Equal(Draw().Svg, Draw().Svg);

    [Fact]
    public void WithoutLinesThereIsNoFigure() => Assert.Throws<ArgumentException>(() => PlanFigure.Draw(Speed, 1, [], (2, 12, 1)));

    private static Figure Draw() => PlanFigure.Draw(
        Speed, 0.89408, [.. new[] { 2, 3, 8 }.Select(sessions => new PlanLine(sessions, [.. Enumerable.Range(1, 40).Select(swings => (swings, 2.77 * Math.Sqrt((0.25 + (0.81 / swings)) / sessions)))]))], (2, 12, 1.1));
}
