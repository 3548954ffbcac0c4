using SwingStudy.Domain.Declarations;
using SwingStudy.Domain.Tests.Declarations.Support;
using SwingStudy.Domain.Variables;

namespace SwingStudy.Domain.Tests.Declarations;

public sealed class DictionaryReaderTests : IDisposable
{
    private const string Main = "name: small\nversion: 1.2.3\ngroups: [speeds]\nnotes:\n  - { version: 1.2.3, changes: [First.] }\n";

    private const string Speeds = """
        title: Speeds
        description: All speeds.
        variables:
          - name: ball_speed
            title: Ball speed
            description: Speed of the ball.
            type: number
            unit: m/s
            display_unit: '[mi_i]/h'
            constraints: { minimum: 0, maximum: 105, basis: flag only }
            typical: { low: 35, high: 80, basis: flag only, note: iron and driver }
            better: higher
            definition: Just after the ball left.
            synonyms: [speed]
            zero_is_missing: true
          - name: surface
            title: Surface
            description: Ground.
            type: string
            constraints: { enum: [mat, turf] }
            level: session
        """;

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void AVariableIsReadInEveryPart()
    {
        var dictionary = Read(Main, Speeds);

        Assert.Equal(("small", new Version(1, 2, 3)), (dictionary.Name, dictionary.Version));
        Assert.Equal(new VariableGroup("speeds", "Speeds", "All speeds."), Assert.Single(dictionary.Groups));
        Assert.Equal(["First."], Assert.Single(dictionary.Notes).Changes);
        Assert.Equivalent(
            new Variable
            {
                Name = "ball_speed", Title = "Ball speed", Description = "Speed of the ball.", Type = VariableType.Number, Group = "speeds", Unit = "m/s",
                DisplayUnit = "[mi_i]/h", Minimum = 0, Maximum = 105, PossibleBasis = "flag only", Typical = new(35, 80, "flag only", "iron and driver"),
                Better = Better.Higher, Definition = "Just after the ball left.", Synonyms = ["speed"], ZeroIsMissing = true,
            },
            dictionary["ball_speed"],
            strict: true);
        Assert.Equal((VariableType.Category, MeasurementScale.Nominal, VariableLevel.Session), (dictionary["surface"].Type, dictionary["surface"].Scale, dictionary["surface"].Level));
    }

    [Fact]
    public void TheHashChangesWithAnyByteOfAnyFile()
    {
        var first = Read(Main, Speeds).Hash;

        Assert.Equal(first, Read(Main, Speeds).Hash);
        Assert.NotEqual(first, Read(Main, Speeds + "\n").Hash);
        Assert.NotEqual(first, Read(Main + "\n", Speeds).Hash);
    }

    [Theory]
    [InlineData("unit: m/s", "unit: mph", "8: 'mph' is a customary name of a unit; expected a UCUM code. Write '[mi_i]/h'. [unit-not-ucum]")]
    [InlineData("unit: m/s", "unit: M/S", "8: the unit 'M/S' is not known; expected a UCUM code such as m/s, or a customary name such as mph. Write the unit as a UCUM code. [unit-unknown]")]
    [InlineData("'[mi_i]/h'", "'[yd_i]'", "9: variable 'ball_speed': '[yd_i]' measures length, 'm/s' measures speed; expected a unit of speed, such as m/s. Correct the unit, or map the column to another variable. [unit-dimension]")]
    [InlineData("basis: flag only }\n    typ", "}\n    typ", "10: 'constraints' of variable 'ball_speed' has no 'basis'; expected physics, a source, or 'flag only'. Add 'basis:' there. [key-missing]")]
    [InlineData("low: 35", "low: -5", "11: 'typical' of variable 'ball_speed' (-5 to 80) leaves the possible range; expected values from 0 to 105. Narrow 'typical' or widen 'constraints'. [range-order]")]
    [InlineData("better: higher", "better: hihger", "12: 'better' is 'hihger'; expected one of none, higher, lower, nearer-target. Did you mean 'higher'? [value-word]")]
    [InlineData("better: higher", "better: nearer-target", "12: variable 'ball_speed' has no 'target'; expected the value to come near to, because 'better' is nearer-target. Add 'target:' there. [key-missing]")]
    [InlineData("name: surface", "name: Surface", "16: 'name' is 'Surface'; expected lower-case words joined by underscores. Write it like 'ball_speed'. [name-form]")]
    [InlineData("synonyms:", "sinonyms:", "14: variable 'ball_speed' has the unknown key 'sinonyms'; expected one of constraints, type, target, better, name, title, description, unit, display_unit, typical, scale, level, axis, formula, definition, reference, synonyms, zero_is_missing. Did you mean 'synonyms'? [key-unknown]")]
    [InlineData("    type: string\n", "", "16: variable 'surface' has no 'type'; expected one of number, integer, boolean, string. Add 'type:' there. [key-missing]")]
    public void AProblemIsToldWithFileLineAndMend(string from, string to, string expected)
    {
        Write(Main, Speeds.Replace(from, to));

        var problem = Assert.Single(DictionaryReader.Read(_folder.Path).Problems);
        Assert.Equal($"{Path.Combine(_folder.Path, "speeds.yaml")}:{expected}", problem.ToString());
    }

    [Fact]
    public void TwoVariablesOfOneNameAreToldWithBothPlaces()
    {
        Write(Main, Speeds.Replace("name: surface", "name: ball_speed"));

        var problem = Assert.Single(DictionaryReader.Read(_folder.Path).Problems);
        Assert.Equal(("name-repeated", 16), (problem.Code, problem.Place.Row));
        Assert.Contains("speeds.yaml:4", problem.Mend, StringComparison.Ordinal);
    }

    [Fact]
    public void AFileThatNoListNamesIsToldAndNotIgnored()
    {
        Write(Main, Speeds);
        _folder.Write("angles.yaml", Speeds);

        Assert.Equal("group-unlisted", Assert.Single(DictionaryReader.Read(_folder.Path).Problems).Code);
    }

    [Fact]
    public void AListedFileThatIsNotThereIsTold()
    {
        Write(Main.Replace("[speeds]", "[speeds, angles]"), Speeds);

        Assert.Equal("file-missing", Assert.Single(DictionaryReader.Read(_folder.Path).Problems).Code);
    }

    [Fact]
    public void AMissingFolderIsAProblemAndNoFault() =>
        Assert.Equal("folder-missing", Assert.Single(DictionaryReader.Read(Path.Combine(_folder.Path, "none")).Problems).Code);

    private VariableDictionary Read(string main, string speeds)
    {
        Write(main, speeds);
        var read = DictionaryReader.Read(_folder.Path);
        Assert.True(read.Succeeded(out var dictionary), string.Join('\n', read.Problems));
        return dictionary;
    }

    private void Write(string main, string speeds)
    {
        _folder.Write("dictionary.yaml", main);
        _folder.Write("speeds.yaml", speeds);
    }
}
