using SwingStudy.Domain.Curves;

namespace SwingStudy.Domain.Tests.Curves;

public class SwingChannelsTests
{
    [Theory]
    [InlineData("total_force_y", "Vertical force, both feet")]
    [InlineData("lead_force_x", "Force towards the target, lead foot")]
    [InlineData("trail_force_toe", "Force towards the toes, trail foot")]
    [InlineData("forearm_shaft_angle", "Angle between forearm and shaft")]
    [InlineData("something_else", "Something else")]
    public void AChannelHasANameThatACoachUses(string channel, string title) => Assert.Equal(title, SwingChannels.TitleOf(channel));

    [Fact]
    public void NoTitleNamesAnAxisByItsLetterAndNoTwoAreAlike()
    {
        Assert.All(SwingChannels.Names, name => Assert.DoesNotMatch(@"\b[xyz]\b|_", SwingChannels.TitleOf(name)));
        Assert.Distinct(SwingChannels.Names.Select(SwingChannels.TitleOf));
    }
}
