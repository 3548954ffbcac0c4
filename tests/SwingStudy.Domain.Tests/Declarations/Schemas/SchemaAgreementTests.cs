using System.Text.Json;
using Json.Schema;
using SwingStudy.Domain.Declarations;
using SwingStudy.Domain.Tests.Declarations.Support;
using SwingStudy.Domain.Variables;

namespace SwingStudy.Domain.Tests.Declarations.Schemas;

/// <summary>Schema and loader say the same of valid and of broken declarations, judged by JsonSchema.Net, an implementation that is not ours.</summary>
public sealed class SchemaAgreementTests : IDisposable
{
    private static readonly Dictionary<string, JsonSchema> Schemas =
        DeclarationSchemas.All.ToDictionary(name => name, name => JsonSchema.FromText(DeclarationSchemas.Text(name)));

    private static readonly VariableDictionary Shipped =
        DictionaryReader.Read(Repository.DictionaryFolder).Value ?? throw new InvalidOperationException("The dictionary does not load.");

    private readonly TemporaryFolder _folder = new();

    public static TheoryData<string> Groups => [.. Directory.GetFiles(Repository.DictionaryFolder, "*.yaml").Select(path => Path.GetFileName(path)).Order()];

    public static TheoryData<string> Protocols => [.. Directory.GetFiles(Repository.ProtocolFolder, "*.yaml").Select(path => Path.GetFileName(path)).Order()];

    public void Dispose() => _folder.Dispose();

    [Theory]
    [MemberData(nameof(Groups))]
    public void ShippedDictionaryFilesFollowTheirSchema(string file) => AssertValid(
        file == DictionaryReader.MainFile ? DeclarationSchemas.Dictionary : DeclarationSchemas.Variables,
        File.ReadAllText(Path.Combine(Repository.DictionaryFolder, file)));

    [Theory]
    [MemberData(nameof(Protocols))]
    public void ShippedProtocolsFollowTheirSchema(string file) =>
        AssertValid(DeclarationSchemas.Protocol, File.ReadAllText(Path.Combine(Repository.ProtocolFolder, file)));

    [Theory]
    [MemberData(nameof(Groups))]
    [MemberData(nameof(Protocols))]
    public void EachShippedFileNamesItsSchemaInItsFirstLine(string file)
    {
        var folder = File.Exists(Path.Combine(Repository.DictionaryFolder, file)) ? Repository.DictionaryFolder : Repository.ProtocolFolder;
        var first = File.ReadLines(Path.Combine(folder, file)).First();

        Assert.True(File.Exists(Path.Combine(folder, first["# Schema: ".Length..].Split(' ')[0].TrimEnd('.'))), first);
    }

    [Theory]
    [MemberData(nameof(Examples.Mappings), MemberType = typeof(Examples))]
    public void SchemaAndLoaderAgreeOnMappings(string change, string yaml, bool valid) =>
        AssertAgree(DeclarationSchemas.Source, change, yaml, valid, MappingReader.Read(_folder.Write("m.yaml", yaml), Some.Dictionary).Problems);

    [Theory]
    [InlineData("scale: 1", "mirror: true, signs: { L: minus, R: plus }")]
    [InlineData("unit: mph", "unit: in-cells")]
    [InlineData("format: dd.MM.yyyy HH:mm:ss, zone: Europe/Lisbon", "format: dd.MM.yyyy HH:mm:ss z")]
    [InlineData("format: dd.MM.yyyy HH:mm:ss", "format: \"E, dd. MMM yyyy HH'h'mm 'Uhr'\"")]
    public void SchemaAndLoaderTakeWhatAMappingMaySay(string from, string to)
    {
        var yaml = Examples.MappingWith(from, to);
        AssertAgree(DeclarationSchemas.Source, to, yaml, true, MappingReader.Read(_folder.Write("m.yaml", yaml), Some.Dictionary).Problems);
    }

    [Theory]
    [MemberData(nameof(Examples.Protocols), MemberType = typeof(Examples))]
    public void SchemaAndLoaderAgreeOnProtocols(string change, string yaml, bool valid) =>
        AssertAgree(DeclarationSchemas.Protocol, change, yaml, valid, ProtocolReader.Read(_folder.Write("p.yaml", yaml), Shipped).Problems);

    [Theory]
    [MemberData(nameof(Examples.Studies), MemberType = typeof(Examples))]
    public void SchemaAndLoaderAgreeOnStudies(string change, string yaml, bool valid) =>
        AssertAgree(DeclarationSchemas.Study, change, yaml, valid, StudyReader.Read(_folder.Write("s.yaml", yaml)).Problems);

    [Theory]
    [MemberData(nameof(Examples.VariableGroups), MemberType = typeof(Examples))]
    public void SchemaAndLoaderAgreeOnVariables(string change, string yaml, bool valid)
    {
        _folder.Write("dictionary.yaml", "name: n\nversion: 1.0.0\ngroups: [g]\n");
        _folder.Write("g.yaml", yaml);
        AssertAgree(DeclarationSchemas.Variables, change, yaml, valid, DictionaryReader.Read(_folder.Path).Problems);
    }

    [Theory]
    [MemberData(nameof(Examples.Dictionaries), MemberType = typeof(Examples))]
    public void SchemaAndLoaderAgreeOnDictionaries(string change, string yaml, bool valid)
    {
        _folder.Write("dictionary.yaml", yaml);
        _folder.Write("g.yaml", "title: G\ndescription: G.\n");
        AssertAgree(DeclarationSchemas.Dictionary, change, yaml, valid, DictionaryReader.Read(_folder.Path).Problems);
    }

    private static void AssertAgree(string schema, string change, string yaml, bool valid, IReadOnlyList<Domain.Problems.Problem> problems)
    {
        Assert.True(problems.Count == 0 == valid, $"The loader on '{change}': {(problems.Count == 0 ? "no problem" : string.Join('\n', problems))}");
        Assert.True(IsValid(schema, yaml) == valid, $"The schema calls '{change}' {(valid ? "broken" : "valid")}.");
    }

    private static void AssertValid(string schema, string yaml)
    {
        var results = Schemas[schema].Evaluate(Element(yaml), new EvaluationOptions { OutputFormat = OutputFormat.List });
        Assert.True(results.IsValid, string.Join('\n', (results.Details ?? []).Where(detail => detail.Errors is not null).Select(detail => $"{detail.InstanceLocation}: {string.Join(", ", detail.Errors!.Values)}")));
    }

    private static bool IsValid(string schema, string yaml) => Schemas[schema].Evaluate(Element(yaml)).IsValid;

    private static JsonElement Element(string yaml) => JsonSerializer.SerializeToElement(YamlAsJson.Read(yaml));
}
