using SwingStudy.Storage.Identities;

namespace SwingStudy.Storage.Tests.Identities;

public class CompositionTests
{
    // Source: Unicode Standard Annex 15, figures 3 to 5; NormalizationTest.txt (Unicode 14.0).
    [Theory]
    [InlineData("A\u030a", "\u00c5")]
    [InlineData("o\u0302", "\u00f4")]
    [InlineData("s\u0323\u0307", "\u1e69")]
    [InlineData("s\u0307\u0323", "\u1e69")]
    [InlineData("d\u0307\u0323", "\u1e0d\u0307")]
    [InlineData("\u1e0b\u0323", "\u1e0d\u0307")]
    [InlineData("\u1100\u1161\u11a8", "\uac01")]
    [InlineData("\uac00\u11a8", "\uac01")]
    [InlineData("\u304b\u3099", "\u304c")]
    [InlineData("e\u0302\u0301", "\u1ebf")]
    [InlineData("plain", "plain")]
    [InlineData("\u0301a", "\u0301a")]
    public void TextsAreComposed(string text, string composed) => Assert.Equal(composed, Composition.Compose(text));
}
