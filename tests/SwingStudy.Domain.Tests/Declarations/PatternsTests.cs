using System.Text.RegularExpressions;
using SwingStudy.Domain.Declarations;

namespace SwingStudy.Domain.Tests.Declarations;

public sealed class PatternsTests
{
    [Fact]
    public void APatternMatchesInLinearTimeWhereItCan()
    {
        var pattern = Patterns.Compile("(a+)+b");

        Assert.True(pattern.Options.HasFlag(RegexOptions.NonBacktracking));
        Assert.DoesNotMatch(pattern, new string('a', 5000));
    }

    [Fact]
    public void APatternThatMustBacktrackIsStoppedByTheClock()
    {
        var pattern = Patterns.Compile("^(?=(a+)+$)(a+)+b$");

        Assert.False(pattern.Options.HasFlag(RegexOptions.NonBacktracking));
        Assert.Equal(Patterns.Timeout, pattern.MatchTimeout);
    }

    [Fact]
    public void AWholeMatchLeavesNothingOverAndKeepsAlternativesTogether()
    {
        var pattern = Patterns.Compile("a|b", whole: true);

        Assert.Matches(pattern, "b");
        Assert.DoesNotMatch(pattern, "ab");
        Assert.DoesNotMatch(pattern, "b\n");
    }
}
