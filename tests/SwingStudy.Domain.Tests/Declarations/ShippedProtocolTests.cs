using SwingStudy.Domain.Declarations;
using SwingStudy.Domain.Protocols;
using SwingStudy.Domain.Tests.Declarations.Support;
using SwingStudy.Domain.Variables;

namespace SwingStudy.Domain.Tests.Declarations;

/// <summary>House rules of the protocols that ship.</summary>
public sealed class ShippedProtocolTests
{
    private static readonly VariableDictionary Dictionary =
        DictionaryReader.Read(Repository.DictionaryFolder).Value ?? throw new InvalidOperationException("The dictionary does not load.");

    public static TheoryData<string> Files => [.. Directory.GetFiles(Repository.ProtocolFolder, "*.yaml").Select(path => Path.GetFileName(path)).Order()];

    [Fact]
    public void TheyCoverTheUsualDesigns() => Assert.Equal(
        [DesignKind.Agreement, DesignKind.Alternating, DesignKind.MultipleBaseline, DesignKind.PrePost, DesignKind.Reliability, DesignKind.Withdrawal],
        Files.Select(file => Load(file.Data).Design).OrderBy(design => design.ToString(), StringComparer.Ordinal));

    [Theory]
    [MemberData(nameof(Files))]
    public void EachLoadsCleanlyAndIsNamedAsItsFile(string file) => Assert.Equal(Path.GetFileNameWithoutExtension(file), Load(file).Name);

    [Theory]
    [MemberData(nameof(Files))]
    public void EachNumberHasItsReason(string file)
    {
        var protocol = Load(file);

        Assert.All(
            [
                .. protocol.Phases.Select(phase => phase.Why), .. protocol.Screening.Select(rule => rule.Why), .. protocol.StopRules.Select(rule => rule.Why),
                .. protocol.Outcomes.Select(outcome => outcome.SmallestWorthwhile?.Reason).OfType<string>(),
                protocol.Analysis.Why, protocol.Eligibility.Why, protocol.Players!.Why, protocol.Randomization?.Why ?? "Nothing is drawn.",
            ],
            reason => Assert.True(reason.Length > 15 && reason.EndsWith('.'), $"'{reason}' is no reason in a sentence."));
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void EachStopsOnPainAndDefersToLocalLaw(string file)
    {
        var protocol = Load(file);

        Assert.Contains(protocol.StopRules, rule => rule is { Variable: "pain_nrs", AtLeast: not null, Rise: not null });
        Assert.Contains(protocol.Cautions, caution => caution.Contains("ocal law", StringComparison.Ordinal));
        Assert.NotNull(protocol.Blinding);
    }

    [Theory]
    [InlineData("cue-pre-post.yaml", "few-points,few-points")]
    [InlineData("cue-multiple-baseline.yaml", "few-points")]
    [InlineData("cue-alternating.yaml", "")]
    [InlineData("cue-withdrawal.yaml", "")]
    [InlineData("device-agreement.yaml", "")]
    [InlineData("test-retest.yaml", "")]
    public void TheirWeaknessesAreKnownAndToldBeforehand(string file, string codes) =>
        Assert.Equal(codes, string.Join(',', ProtocolCheck.Review(Load(file), Dictionary).Warnings.Select(warning => warning.Code)));

    [Theory]
    [InlineData("cue-pre-post.yaml", 20)]
    [InlineData("cue-multiple-baseline.yaml", 24)]
    [InlineData("cue-alternating.yaml", 208)]
    [InlineData("cue-withdrawal.yaml", 35)]
    public void TheirDrawsAllowATestAtFivePercent(string file, double assignments)
    {
        var count = RandomizationSize.Of(Load(file));

        Assert.Equal(assignments, count);
        Assert.True(1 / count <= 0.05);
    }

    [Fact]
    public void AWorthwhileChangeInMilesAnHourIsHeldInMetresASecond() =>
        Assert.Equal(0.89408, Load("cue-pre-post.yaml").Outcomes[0].SmallestWorthwhile!.Amount, 1e-12);

    private static Protocol Load(string file)
    {
        var read = ProtocolReader.Read(Path.Combine(Repository.ProtocolFolder, file), Dictionary);
        Assert.True(read.Succeeded(out var protocol), string.Join('\n', read.Problems));
        return protocol;
    }
}
