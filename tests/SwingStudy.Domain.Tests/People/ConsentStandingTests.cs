using NodaTime;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.People;
using SwingStudy.Domain.Protocols;

namespace SwingStudy.Domain.Tests.People;

public sealed class ConsentStandingTests
{
    private static readonly ParticipantId P01 = new("P01");
    private static readonly Eligibility Adults = new(18, false, 18, []);
    private static readonly Eligibility WithMinors = new(12, true, 18, []);

    [Theory]
    [InlineData("30-44", "", "consent-missing")]
    [InlineData("30-44", "participant", null)]
    [InlineData("30-44", "guardian assent", "consent-again")]
    [InlineData("16-17", "", "guardian-missing")]
    [InlineData("16-17", "participant", "guardian-missing")]
    [InlineData("16-17", "guardian", "assent-missing")]
    [InlineData("16-17", "assent", "guardian-missing")]
    [InlineData("16-17", "guardian assent", null)]
    [InlineData(null, "participant", "age-unknown")]
    public void WhoHasToSignDependsOnAge(string? band, string signers, string? lacking)
    {
        var consents = signers.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(signer => Yes(Enum.Parse<ConsentSigner>(signer, ignoreCase: true))).ToList();
        Assert.Equal(lacking, new ConsentStanding(WithMinors).Lacking(Person(band), consents, ConsentScope.Research)?.Code);
    }

    [Fact]
    public void AnUnrecordedAgeIsOfAgeWhereTheProtocolTakesAdultsAlone() =>
        Assert.Null(new ConsentStanding(Adults).Lacking(Person(null), [Yes(ConsentSigner.Participant)], ConsentScope.Research));

    [Fact]
    public void ABandThatStraddlesMajorityCountsAsMinor() =>
        Assert.Equal("guardian-missing", new ConsentStanding(WithMinors with { AgeOfMajority = 21 }).Lacking(Person("18-29"), [Yes(ConsentSigner.Participant)], ConsentScope.Research)?.Code);

    [Fact]
    public void NoScopeIncludesAnother()
    {
        var standing = new ConsentStanding(Adults);
        Consent[] consents = [Yes(ConsentSigner.Participant), Yes(ConsentSigner.Participant) with { Scope = ConsentScope.Video }];
        Assert.Equal([ConsentScope.Research, ConsentScope.Video], standing.InForce(Person("30-44"), consents));
    }

    [Fact]
    public void TheNewestWordOfEachSignerHolds()
    {
        var standing = new ConsentStanding(WithMinors);
        List<Consent> consents = [Yes(ConsentSigner.Guardian), Yes(ConsentSigner.Assent), Yes(ConsentSigner.Assent) with { Given = false }];
        Assert.Equal("consent-refused", standing.Lacking(Person("12-15"), consents, ConsentScope.Research)?.Code);
        consents.Add(Yes(ConsentSigner.Assent));
        Assert.Null(standing.Lacking(Person("12-15"), consents, ConsentScope.Research));
    }

    [Theory]
    [InlineData("under-12", 0, 11)]
    [InlineData("16-17", 16, 17)]
    [InlineData("75-and-over", 75, null)]
    public void BandsOfTheDictionaryAreRead(string text, int from, int? to) => Assert.Equal(new AgeBand(from, to), AgeBand.Read(text));

    [Theory]
    [InlineData("under-12", "", "not-eligible-age")]
    [InlineData("16-17", "", "")]
    [InlineData("30-44", "left", "not-eligible")]
    [InlineData("30-44", "right", "")]
    public void EligibilityIsHeldAgainstTheProtocol(string band, string handedness, string code)
    {
        var eligibility = WithMinors with { Requires = new Dictionary<string, IReadOnlyList<string>> { ["handedness"] = ["right"] } };
        var values = new Dictionary<string, string> { ["age_band"] = band };
        if (handedness.Length > 0)
            values["handedness"] = handedness;
        Assert.Equal(code, string.Join(' ', EligibilityCheck.Check(new PersonFacts(P01, values), eligibility).Select(problem => problem.Code)));
    }

    [Theory]
    [InlineData("16-17", "not-eligible-age")]
    [InlineData("18-29", "")]
    public void AProtocolForAdultsTakesNoMinors(string band, string code) =>
        Assert.Equal(code, string.Join(' ', EligibilityCheck.Check(Person(band), Adults).Select(problem => problem.Code)));

    private static PersonFacts Person(string? band) => new(P01, band is null ? new Dictionary<string, string>() : new Dictionary<string, string> { ["age_band"] = band });

    private static Consent Yes(ConsentSigner signer) => new(P01, ConsentScope.Research, true, signer, Instant.FromUtc(2026, 9, 1, 8, 0));
}
