using SwingStudy.Domain.Problems;

namespace SwingStudy.Domain.Tests.Problems;

public sealed class NearestTests
{
    [Theory]
    [InlineData("ball_sped", "ball_speed")]
    [InlineData("bal_lspeed", "ball_speed")]
    [InlineData("BALL_SPEED", "ball_speed")]
    [InlineData("carry", "carry_distance")]
    [InlineData("club speed", null)]
    [InlineData("xyz", null)]
    [InlineData("", null)]
    public void ANearWordIsOfferedAndAFarOneIsNot(string word, string? expected) =>
        Assert.Equal(expected, Nearest.Of(word, ["ball_speed", "carry_distance", "path"]));

    [Fact]
    public void AmongEquallyNearWordsTheFirstInOrderIsOffered() => Assert.Equal("part-a", Nearest.Of("part-c", ["part-b", "part-a"]));

    [Fact]
    public void WithoutKnownWordsNothingIsOffered() => Assert.Null(Nearest.Of("word", []));
}
