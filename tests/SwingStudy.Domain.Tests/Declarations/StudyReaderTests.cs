using SwingStudy.Domain.Declarations;
using SwingStudy.Domain.Tests.Declarations.Support;

namespace SwingStudy.Domain.Tests.Declarations;

public sealed class StudyReaderTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void AStudyIsReadWithItsDefaults()
    {
        Assert.True(StudyReader.Read(_folder.Write("study.yaml", "name: Autumn\nzone: Europe/Lisbon\n")).Succeeded(out var study));

        Assert.Equal(("Autumn", "Europe/Lisbon", "data-dictionary", 0), (study.Name, study.Zone, study.Dictionary, study.PreferredSources.Count));
    }

    [Fact]
    public void PreferredSourcesKeepTheirOrder()
    {
        Assert.True(StudyReader.Read(_folder.Write("study.yaml", "name: A\nzone: Etc/UTC\npreferred_sources: [plates, bay]\n")).Succeeded(out var study));

        Assert.Equal(["plates", "bay"], study.PreferredSources);
    }

    [Theory]
    [InlineData("name: A\nzone: Europa/Lisbon\n", "2: 'Europa/Lisbon' is no time zone; expected an IANA name such as Europe/Lisbon. Did you mean 'Europe/Lisbon'? [zone-unknown]")]
    [InlineData("name: A\n", "1: the study has no 'zone'; expected the IANA zone in which days are told. Add 'zone:' there. [key-missing]")]
    [InlineData("name: 7\nzone: Etc/UTC\n", "1: 'name' is 7; expected a text. Put it in quotes: '7'. [value-type]")]
    [InlineData("name: A\nzone: Etc/UTC\npreferred_sources: [Bay 1]\n", "3: 'preferred_sources' is 'Bay 1'; expected names of sources. Write it like 'bay-strike'. [name-form]")]
    public void AProblemIsToldWithFileLineAndMend(string yaml, string expected)
    {
        var file = _folder.Write("study.yaml", yaml);

        Assert.Equal($"{file}:{expected}", Assert.Single(StudyReader.Read(file).Problems).ToString());
    }
}
