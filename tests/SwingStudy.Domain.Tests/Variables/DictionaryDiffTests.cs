using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Tests.Declarations.Support;
using SwingStudy.Domain.Variables;

namespace SwingStudy.Domain.Tests.Variables;

public sealed class DictionaryDiffTests
{
    private static readonly Variable Speed = Some.Number("ball_speed", "m/s") with
    {
        Minimum = 0, Maximum = 100, PossibleBasis = "flag only", Typical = new(30, 80, "flag only"), Definition = "At the ball.", Axis = "+ on",
    };

    private static readonly Variable Ground = new()
    {
        Name = "surface", Title = "Surface", Description = "Under the ball.", Type = VariableType.Category, Words = ["mat", "turf"], Group = "g",
    };

    public static TheoryData<string, Variable, ChangeWeight, string> Changes => new()
    {
        { "unit", Speed with { Unit = "km/h" }, ChangeWeight.Major, "unit" },
        { "type", Speed with { Type = VariableType.Integer }, ChangeWeight.Major, "type" },
        { "definition", Speed with { Definition = "At the net." }, ChangeWeight.Major, "definition" },
        { "sign", Speed with { Axis = "- on" }, ChangeWeight.Major, "axis" },
        { "direction", Speed with { Better = Better.Lower }, ChangeWeight.Major, "better" },
        { "level", Speed with { Level = VariableLevel.Session }, ChangeWeight.Major, "level" },
        { "narrower", Speed with { Maximum = 90 }, ChangeWeight.Major, "constraints.maximum" },
        { "narrower from open", Speed with { Minimum = 1 }, ChangeWeight.Major, "constraints.minimum" },
        { "wider", Speed with { Maximum = null }, ChangeWeight.Minor, "constraints.maximum" },
        { "wider below", Speed with { Minimum = -1 }, ChangeWeight.Minor, "constraints.minimum" },
        { "typical", Speed with { Typical = new(30, 85, "flag only") }, ChangeWeight.Minor, "typical" },
        { "shown", Speed with { DisplayUnit = "km/h" }, ChangeWeight.Minor, "display_unit" },
        { "synonyms", Speed with { Synonyms = ["speed"] }, ChangeWeight.Minor, "synonyms" },
        { "words", Speed with { Description = "Better said." }, ChangeWeight.Patch, "description" },
        { "basis", Speed with { PossibleBasis = "physics: none" }, ChangeWeight.Patch, "constraints.basis" },
        { "word gone", Ground with { Words = ["mat"] }, ChangeWeight.Major, "constraints.enum" },
        { "word added", Ground with { Words = ["mat", "turf", "sand"] }, ChangeWeight.Minor, "constraints.enum" },
    };

    [Theory]
    [MemberData(nameof(Changes))]
    public void EachPropertyHasItsWeight(string what, Variable changed, ChangeWeight weight, string property)
    {
        Assert.NotEmpty(what);
        var before = Of("1.2.3", Speed, Ground);
        var after = Of("1.2.3", [.. before.Variables.Select(variable => variable.Name == changed.Name ? changed : variable)]);

        var change = Assert.Single(DictionaryDiff.Between(before, after).Changes);
        Assert.Equal((changed.Name, property, weight), (change.Variable, change.Property, change.Weight));
    }

    // Semantic Versioning 2.0.0, items 6 to 8.
    [Theory]
    [InlineData(ChangeWeight.Major, "2.0.0", "1.9.9")]
    [InlineData(ChangeWeight.Minor, "1.3.0", "1.2.9")]
    [InlineData(ChangeWeight.Patch, "1.2.4", "1.2.3")]
    [InlineData(ChangeWeight.None, "1.2.3", "1.2.2")]
    public void TheVersionHasToRiseWithTheWeight(ChangeWeight weight, string least, string tooLow)
    {
        var changed = weight switch
        {
            ChangeWeight.Major => Speed with { Unit = "km/h" },
            ChangeWeight.Minor => Speed with { DisplayUnit = "km/h" },
            ChangeWeight.Patch => Speed with { Title = "Speed" },
            _ => Speed,
        };

        var diff = DictionaryDiff.Between(Of("1.2.3", Speed), Of(least, changed));
        Assert.Equal(Version.Parse(least), diff.LeastVersion);
        Assert.True(diff.VersionFits);
        Assert.Equal(weight == ChangeWeight.Major, diff.Breaks);
        Assert.False(DictionaryDiff.Between(Of("1.2.3", Speed), Of(tooLow, changed)).VersionFits);
    }

    [Fact]
    public void AGoneVariableBreaksAndAnAddedOneDoesNot()
    {
        var gone = Assert.Single(DictionaryDiff.Between(Of("1.0.0", Speed, Ground), Of("2.0.0", Speed)).Changes);
        var added = Assert.Single(DictionaryDiff.Between(Of("1.0.0", Speed), Of("1.1.0", Speed, Ground)).Changes);

        Assert.Equal("surface, variable: Surface -> - (major): its column is gone; a renamed variable is one gone and one added", gone.ToString());
        Assert.Equal("surface, variable: - -> Surface (minor): a new column, empty in older data", added.ToString());
    }

    [Fact]
    public void AnotherOrderOfColumnsIsToldOnce()
    {
        var change = Assert.Single(DictionaryDiff.Between(Of("1.0.0", Speed, Ground), Of("1.1.0", Ground, Speed)).Changes);

        Assert.Equal(("surface", "order", ChangeWeight.Minor), (change.Variable, change.Property, change.Weight));
    }

    [Fact]
    public void TheHeaviestChangeComesFirst()
    {
        var diff = DictionaryDiff.Between(Of("1.0.0", Speed, Ground), Of("1.0.1", Speed with { Title = "Speed" }, Ground with { Words = ["mat"] }));

        Assert.Equal(["surface", "ball_speed"], diff.Changes.Select(change => change.Variable));
        Assert.False(diff.VersionFits);
    }

    /// <summary>A property that the comparison forgets would change data silently: each property of a variable is changed in turn.</summary>
    [Fact]
    public void NoPropertyOfAVariableIsForgotten()
    {
        string[] derived = [nameof(Variable.Name), nameof(Variable.ShownUnit), nameof(Variable.Column)];
        foreach (var property in typeof(Variable).GetProperties().Where(property => !derived.Contains(property.Name)))
        {
            var changed = Speed with { };
            property.SetValue(changed, Other(property.GetValue(Speed), property.PropertyType));
            Assert.True(DictionaryDiff.Between(Of("1.0.0", Speed), Of("1.0.0", changed)).Changes.Count > 0, $"{property.Name} changed and no difference is told.");
        }
    }

    private static object Other(object? value, Type type) => type switch
    {
        _ when type == typeof(string) => value + "x",
        _ when type == typeof(double?) => ((double?)value ?? 0) + 1,
        _ when type == typeof(bool) => !(bool)value!,
        _ when type == typeof(TypicalRange) => new TypicalRange(1, 2, "flag only"),
        _ when type == typeof(IReadOnlyList<string>) => (string[])["another"],
        _ when type.IsEnum => Enum.GetValues(type).Cast<object>().First(other => !other.Equals(value)),
        _ => throw new InvalidOperationException($"No other value for {type} is known to this test."),
    };

    private static VariableDictionary Of(string version, params Variable[] variables) =>
        new("small", Version.Parse(version), variables, Sha256.Of(version));
}
