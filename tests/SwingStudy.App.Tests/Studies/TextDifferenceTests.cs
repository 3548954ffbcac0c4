using CsCheck;
using SwingStudy.App.Studies;

namespace SwingStudy.App.Tests.Studies;

public sealed class TextDifferenceTests
{
    [Fact]
    public void AChangedLineIsRemovedAndAdded() => Assert.Equal(
        [new(LineChange.Kept, 1, 1, "a"), new(LineChange.Removed, 2, null, "b"), new(LineChange.Added, null, 2, "x"), new(LineChange.Kept, 3, 3, "c"), new(LineChange.Added, null, 4, "d")],
        TextDifference.Of("a\nb\nc\n", "a\nx\nc\nd\n"));

    [Fact]
    public void BothTextsCanBeReadFromTheDifference() => Gen.Select(Gen.Char["abc"].List[1, 12], Gen.Char["abc"].List[1, 12]).Sample((first, second) =>
    {
        var lines = TextDifference.Of(string.Join('\n', first), string.Join('\n', second));

        return lines.Where(line => line.Change != LineChange.Added).Select(line => line.Text).SequenceEqual(first.Select(letter => letter.ToString()))
            && lines.Where(line => line.Change != LineChange.Removed).Select(line => line.Text).SequenceEqual(second.Select(letter => letter.ToString()));
    });
}
