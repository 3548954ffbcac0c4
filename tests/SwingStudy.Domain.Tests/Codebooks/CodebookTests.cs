using System.Text.Json;
using SwingStudy.Domain.Codebooks;
using SwingStudy.Domain.Declarations;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Tests.Declarations.Support;
using SwingStudy.Domain.Variables;

namespace SwingStudy.Domain.Tests.Codebooks;

public sealed class CodebookTests
{
    private static readonly VariableDictionary Small = new(
        "small",
        new(1, 2, 0),
        [
            Some.Number("ball_speed", "m/s") with
            {
                Title = "Ball speed", Description = "Speed of the ball.", DisplayUnit = "[mi_i]/h", Minimum = 0, Maximum = 105, PossibleBasis = "flag only",
                Typical = new(35, 80, "flag only", "driver higher"), Better = Better.Higher, ZeroIsMissing = true, Reference = "A paper (2011)", Synonyms = ["speed"],
            },
            Some.Number("club_path_angle", "deg") with
            {
                Title = "Club path", Description = "Direction.", Better = Better.NearerTarget, Target = 0, Scale = MeasurementScale.Interval, Axis = "+ out",
                Formula = "from curves", Definition = "At impact.",
            },
            new()
            {
                Name = "surface", Title = "Surface", Description = "Ground.", Type = VariableType.Category, Words = ["mat", "turf"], Group = "g",
                Scale = MeasurementScale.Nominal, Level = VariableLevel.Session,
            },
        ],
        Sha256.Of("small"))
    {
        Groups = [new("g", "Group", "All of it.")],
        Notes = [new(new(1, 2, 0), ["Surface added."])],
    };

    [Fact]
    public void TheDocumentForPeopleSaysAllThatIsDeclared() =>
        Approved.Check("codebook.md", MarkdownCodebook.Write(Small));

    [Fact]
    public void TheTableSchemaSaysAllThatIsDeclared() =>
        Approved.Check("codebook.json", TableSchemaCodebook.Write(Small));

    // Frictionless Table Schema, version 2: 'fields' is required, each with a unique 'name'; types and constraints by name.
    [Fact]
    public void TheShippedDictionaryIsATableSchema()
    {
        var dictionary = DictionaryReader.Read(Repository.DictionaryFolder).Value!;
        using var document = JsonDocument.Parse(TableSchemaCodebook.Write(dictionary));
        var fields = document.RootElement.GetProperty("fields").EnumerateArray().ToList();

        Assert.Equal(dictionary.Variables.Select(variable => variable.Name), fields.Select(field => field.GetProperty("name").GetString()!));
        Assert.All(fields, field => Assert.Contains(field.GetProperty("type").GetString(), (string[])["number", "integer", "boolean", "string"]));
        Assert.All(
            fields.Where(field => field.TryGetProperty("constraints", out _)),
            field => Assert.All(field.GetProperty("constraints").EnumerateObject(), constraint => Assert.Contains(constraint.Name, (string[])["minimum", "maximum", "enum"])));
        Assert.All(fields.Where(field => field.GetProperty("type").GetString() == "number"), field => Assert.True(field.TryGetProperty("unit", out _)));
    }

    [Fact]
    public void TheShippedCodebookNamesEachVariableOnce()
    {
        var dictionary = DictionaryReader.Read(Repository.DictionaryFolder).Value!;
        var text = MarkdownCodebook.Write(dictionary);

        Assert.All(dictionary.Variables, variable => Assert.Equal(2, text.Split($": `{variable.Name}`\n").Length));
    }
}
