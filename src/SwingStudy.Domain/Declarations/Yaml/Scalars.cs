using System.Globalization;
using System.Text.RegularExpressions;
using YamlDotNet.Core;
using YamlDotNet.RepresentationModel;

namespace SwingStudy.Domain.Declarations.Yaml;

/// <summary>Resolves scalars as the core schema of YAML 1.2 does: <c>No</c> is a text, <c>1e3</c> a number, <c>'7'</c> a text.</summary>
internal static partial class Scalars
{
    /// <summary>The kind of a scalar.</summary>
    public static ScalarKind KindOf(YamlScalarNode scalar)
    {
        if (scalar.Style is not (ScalarStyle.Plain or ScalarStyle.Any))
            return ScalarKind.Text;
        return scalar.Value switch
        {
            null or "" or "~" or "null" or "Null" or "NULL" => ScalarKind.Nothing,
            "true" or "True" or "TRUE" or "false" or "False" or "FALSE" => ScalarKind.Flag,
            { } text when NumberPattern().IsMatch(text) => ScalarKind.Number,
            _ => ScalarKind.Text,
        };
    }

    /// <summary>The number of a scalar of that kind.</summary>
    public static double Number(YamlScalarNode scalar) => double.Parse(scalar.Value!, NumberStyles.Float, CultureInfo.InvariantCulture);

    /// <summary>What a node is, in words, for messages.</summary>
    public static string Describe(YamlNode node) => node switch
    {
        YamlMappingNode => "a group of keys",
        YamlSequenceNode => "a list",
        YamlScalarNode scalar => KindOf(scalar) switch
        {
            ScalarKind.Nothing => "nothing",
            ScalarKind.Flag or ScalarKind.Number => scalar.Value!,
            _ => $"'{scalar.Value}'",
        },
        _ => "an alias",
    };

    [GeneratedRegex(@"^[-+]?(\.[0-9]+|[0-9]+(\.[0-9]*)?)([eE][-+]?[0-9]+)?$", RegexOptions.CultureInvariant)]
    private static partial Regex NumberPattern();
}
