using SwingStudy.Storage.Registry;

namespace SwingStudy.Storage.Tests.Registry;

public class CanonicalJsonTests
{
    // Source: RFC 8785, 3.2.2 (sample input) and 3.2.4 (its canonical form).
    [Fact]
    public void TheWorkedExampleOfTheStandardComesOut() => Assert.Equal(
        "{\"literals\":[null,true,false],\"numbers\":[333333333.3333333,1e+30,4.5,0.002,1e-27],\"string\":\"€$\\u000f\\nA'B\\\"\\\\\\\\\\\"/\"}",
        CanonicalJson.Of("""
            {
              "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
              "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
              "literals": [null, true, false]
            }
            """));

    // Source: RFC 8785, appendix B (bits of a double, its canonical text).
    [Theory]
    [InlineData("0000000000000000", "0")]
    [InlineData("8000000000000000", "0")]
    [InlineData("0000000000000001", "5e-324")]
    [InlineData("7fefffffffffffff", "1.7976931348623157e+308")]
    [InlineData("4340000000000000", "9007199254740992")]
    [InlineData("4430000000000000", "295147905179352830000")]
    [InlineData("44b52d02c7e14af5", "9.999999999999997e+22")]
    [InlineData("44b52d02c7e14af6", "1e+23")]
    [InlineData("444b1ae4d6e2ef4f", "999999999999999900000")]
    [InlineData("444b1ae4d6e2ef50", "1e+21")]
    [InlineData("3eb0c6f7a0b5ed8c", "9.999999999999997e-7")]
    [InlineData("3eb0c6f7a0b5ed8d", "0.000001")]
    [InlineData("41b3de4355555553", "333333333.3333332")]
    [InlineData("becbf647612f3696", "-0.0000033333333333333333")]
    public void NumbersAreWrittenAsTheStandardSays(string bits, string text)
    {
        var number = BitConverter.Int64BitsToDouble(Convert.ToInt64(bits, 16));
        Assert.Equal(text, CanonicalNumber.Of(number));
    }

    [Fact]
    public void MembersAreOrderedByCodeUnits() => Assert.Equal("""{"A":1,"a":2,"é":3}""", CanonicalJson.Of("""{"é":3,"a":2,"A":1}"""));
}
