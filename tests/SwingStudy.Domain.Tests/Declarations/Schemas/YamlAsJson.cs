using System.Globalization;
using System.Text.Json.Nodes;
using SwingStudy.Domain.Declarations.Yaml;
using YamlDotNet.RepresentationModel;

namespace SwingStudy.Domain.Tests.Declarations.Schemas;

/// <summary>A YAML document as the JSON document that an editor's schema check sees.</summary>
internal static class YamlAsJson
{
    public static JsonNode? Read(string yaml)
    {
        var stream = new YamlStream();
        stream.Load(new StringReader(yaml));
        return Convert(stream.Documents[0].RootNode);
    }

    private static JsonNode? Convert(YamlNode node) => node switch
    {
        YamlMappingNode map => new JsonObject(map.Children.Select(pair => KeyValuePair.Create(((YamlScalarNode)pair.Key).Value!, Convert(pair.Value)))),
        YamlSequenceNode list => new JsonArray([.. list.Select(Convert)]),
        YamlScalarNode scalar => Scalars.KindOf(scalar) switch
        {
            ScalarKind.Nothing => null,
            ScalarKind.Flag => JsonValue.Create(bool.Parse(scalar.Value!)),
            ScalarKind.Number => long.TryParse(scalar.Value, CultureInfo.InvariantCulture, out var whole)
                ? JsonValue.Create(whole)
                : JsonValue.Create(Scalars.Number(scalar)),
            _ => JsonValue.Create(scalar.Value),
        },
        _ => throw new InvalidOperationException("An unknown kind of YAML node."),
    };
}
