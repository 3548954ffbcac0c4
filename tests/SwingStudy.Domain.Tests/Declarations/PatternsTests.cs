using System.Text.RegularExpressions;
using CsCheck;
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

    [Theory]
    [InlineData(@"^Subject\t(?<value>.+)$", false)]
    [InlineData(@"^Rate: (?<value>\d+) Hz$", false)]
    [InlineData(@"^(a+)+b", true)]
    [InlineData(@"^a+b+$", true)]
    [InlineData(@"\d+ Hz", true)]
    [InlineData(@"^[0-9]+ Hz", true)]
    [InlineData(@"^a|b+", true)]
    public void APatternThatIsLinearAnywayStartsAtOnce(string pattern, bool isForTheLinearEngine) =>
        Assert.Equal(isForTheLinearEngine, Patterns.Compile(pattern).Options.HasFlag(RegexOptions.NonBacktracking));

    /// <summary>Whichever engine a pattern is given to, it finds what the linear one finds.</summary>
    [Fact]
    public void BothEnginesFindTheSame()
    {
        var part = Gen.OneOf("a", "b", ".", @"\d", @"\t", "(?<value>.+)", "(?:ab)", "(a)", "a*", @"\d+", "b?", "a{1,2}", "$", " ", @"\.", "|");
        Gen.Select(part.Array[1, 5], Gen.String[Gen.OneOf('a', 'b', '1', '\t', ' ', '.', '\n'), 0, 8], Gen.Bool).Sample((parts, text, whole) =>
        {
            var pattern = "^" + string.Concat(parts);
            var linear = new Regex(whole ? $@"\A(?:{pattern})\z" : pattern, RegexOptions.CultureInvariant | RegexOptions.NonBacktracking).Match(text);
            var match = Patterns.Compile(pattern, whole).Match(text);
            Assert.Equal((linear.Success, linear.Value, linear.Groups["value"].Value), (match.Success, match.Value, match.Groups["value"].Value));
        }, iter: 2_000);
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
