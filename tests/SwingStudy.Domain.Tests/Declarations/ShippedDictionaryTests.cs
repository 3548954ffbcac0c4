using System.Text.RegularExpressions;
using SwingStudy.Domain.Declarations;
using SwingStudy.Domain.Tests.Declarations.Support;
using SwingStudy.Domain.Units;
using SwingStudy.Domain.Variables;

namespace SwingStudy.Domain.Tests.Declarations;

/// <summary>House rules of the dictionary that ships: each failure says which variable breaks which rule.</summary>
public sealed partial class ShippedDictionaryTests
{
    private static readonly VariableDictionary Dictionary = Load();

    public static TheoryData<string> Names => [.. Dictionary.Variables.Select(variable => variable.Name)];

    [Fact]
    public void ItLoadsCleanlyWithItsGroupsInOrder()
    {
        Assert.Equal(
            ["club-and-ball", "forces", "motion", "events-and-tempo", "ratings-and-attention", "person", "equipment-and-conditions", "session-course"],
            Dictionary.Groups.Select(group => group.Name));
        Assert.Equal(new Version(1, 2, 0), Dictionary.Version);
        Assert.Equal(Dictionary.Version, Dictionary.Notes[0].Version);
        Assert.InRange(Dictionary.Variables.Count, 110, 160);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void EachVariableIsDescribedInWholeSentences(string name)
    {
        var variable = Dictionary[name];

        Assert.EndsWith(".", variable.Description, StringComparison.Ordinal);
        Assert.True(variable.Description.Length >= 12);
        Assert.True(char.IsUpper(variable.Title[0]));
        Assert.NotEmpty(variable.Synonyms);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void EachRangeCarriesABasisOfAKnownKind(string name)
    {
        var variable = Dictionary[name];

        if (variable.Type == VariableType.Number)
            Assert.True(variable is { Minimum: not null, Maximum: not null }, "A measured number needs a possible range.");
        foreach (var basis in new[] { variable.PossibleBasis, variable.Typical?.Basis }.OfType<string>())
            Assert.Matches(KnownBasis(), basis);
    }

    [Fact]
    public void FormulasOfVariablesAloneAreArithmeticOverTheirNames()
    {
        var arithmetic = Dictionary.Variables.Where(variable => variable.Formula is { } formula
            && Arithmetic().IsMatch(formula)
            && Names_().Matches(formula).All(match => Dictionary.TryGet(match.Value, out _)));

        Assert.Equal(
            [
                "speed_ratio", "face_to_path", "vertical_impulse_downswing_bw", "grip_speed_drop", "angle_lost_before_grip_peak", "angle_lost_to_impact",
                "separation_top", "separation_stretch", "backswing_time", "downswing_time", "tempo_ratio",
            ],
            arithmetic.Select(variable => variable.Name));
    }

    [Fact]
    public void ASynonymMeansOneVariableUnlessTheUnitTellsThemApart()
    {
        var shared = Dictionary.Variables
            .SelectMany(variable => variable.Synonyms.Select(synonym => (synonym: synonym.ToLowerInvariant(), variable)).DistinctBy(pair => pair.synonym))
            .GroupBy(pair => pair.synonym)
            .Where(group => group.Select(pair => pair.variable.Unit is { } code ? UnitCatalogue.ParseCode(code)!.Dimension.Name : "text").Distinct().Count() < group.Count())
            .Select(group => group.Key + ": " + string.Join(", ", group.Select(pair => pair.variable.Name)));

        Assert.Empty(shared);
    }

    [Fact]
    public void ColumnNamesOfTablesAreNotTakenTwice()
    {
        foreach (var table in SwingStudy.Domain.Tables.StudyTables.All(Dictionary))
            Assert.Equal(table.Columns.Count, table.Columns.Select(column => column.Name).Distinct(StringComparer.OrdinalIgnoreCase).Count());
    }

    [Fact]
    public void TheTradeSeesItsOwnUnits()
    {
        Assert.Equal("mph", Shown("club_head_speed"));
        Assert.Equal("yd", Shown("carry_distance"));
        Assert.Equal("rpm", Shown("spin_rate"));
        Assert.Equal("°", Shown("launch_angle"));
        Assert.Equal("BW", Shown("vertical_peak_total"));
    }

    private static string Shown(string name) => UnitCatalogue.ParseCode(Dictionary[name].ShownUnit!)!.Symbol;

    private static VariableDictionary Load()
    {
        var read = DictionaryReader.Read(Repository.DictionaryFolder);
        Assert.True(read.Succeeded(out var dictionary), string.Join('\n', read.Problems));
        return dictionary;
    }

    [GeneratedRegex("^(flag only|definition: |physics: |rule of the trade: |common practice, no source; flag only|about .*; flag only|.*[(]?(19|20)[0-9]{2}|Sorbie et al)")]
    private static partial Regex KnownBasis();

    [GeneratedRegex("^[0-9a-z_ ()+*/-]+$")]
    private static partial Regex Arithmetic();

    [GeneratedRegex("[a-z][a-z_]+")]
    private static partial Regex Names_();
}
