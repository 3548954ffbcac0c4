using SwingStudy.App.Studies;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Protocols;

namespace SwingStudy.App.Tests.Studies;

public sealed class BlindCodesTests
{
    [Fact]
    public void EachNameGetsOneCodeAndNoTwoTheSame()
    {
        var codes = BlindCodes.Missing(Protocol(masked: true), []);

        Assert.Equal(["baseline", "cue", "later"], codes.Where(code => code.Kind == MaskedName.Phase).Select(code => code.Name));
        Assert.Equal(["press"], codes.Where(code => code.Kind == MaskedName.Cue).Select(code => code.Name));
        Assert.Equal(codes.Count, codes.Select(code => (code.Kind, code.Code)).Distinct().Count());
        Assert.All(codes, code => Assert.DoesNotContain(code.Name, code.Code, StringComparison.Ordinal));
    }

    [Fact]
    public void AnAmendmentGivesCodesToNewNamesAlone()
    {
        MaskedName[] known = [new(MaskedName.Phase, "baseline", "K"), new(MaskedName.Phase, "cue", "T"), new(MaskedName.Contrast, "with-cue", "contrast-A"), new(MaskedName.Cue, "press", "cue-B")];

        var code = Assert.Single(BlindCodes.Missing(Protocol(masked: true), known));
        Assert.Equal("later", code.Name);
        Assert.DoesNotContain(code.Code, new[] { "K", "T" });
    }

    [Fact]
    public void WhereNobodyIsBlindThereAreNoCodes() => Assert.Empty(BlindCodes.Missing(Protocol(masked: false), []));

    /// <summary>Codes in the order of the phases, or always the same, would tell what they hide.</summary>
    [Fact]
    public void TheOrderOfTheCodesDiffersFromStudyToStudy() =>
        Assert.True(Enumerable.Range(0, 40).Select(_ => string.Join(',', BlindCodes.Missing(Protocol(masked: true), []).Select(code => code.Code))).Distinct().Count() > 30);

    private static Protocol Protocol(bool masked) => new()
    {
        Name = "small",
        Version = new Version(1, 0, 0),
        Title = "Small",
        Question = "",
        Design = DesignKind.PrePost,
        Phases = [Phase("baseline", PhaseRole.Baseline, null), Phase("cue", PhaseRole.Intervention, "press"), Phase("later", PhaseRole.FollowUp, null)],
        Eligibility = new(18, false, 18, []),
        Outcomes = [],
        Contrasts = [new("with-cue", "baseline", "cue")],
        Blinding = new(masked, "Words."),
        File = "protocol.yaml",
        Hash = Sha256.Of("protocol"),
    };

    private static Phase Phase(string name, PhaseRole role, string? cue) => new(name, role, 5, 10, null, cue, "");
}
