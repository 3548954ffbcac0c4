using System.Globalization;
using SwingStudy.Ingestion.Readers;
using SwingStudy.Ingestion.Readers.C3d;

namespace SwingStudy.Ingestion.Recordings;

/// <summary>Parameters of a C3D file as lines, so that mappings find what they say as they find it in the preamble of a text.</summary>
internal static class C3dPreamble
{
    private const int MostValues = 16;

    /// <summary>One line a parameter with few values, such as <c>SUBJECTS:NAMES: Ada</c>, several values with commas between them.</summary>
    public static IReadOnlyList<PreambleLine> Of(C3dParameters parameters) =>
    [
        .. parameters.All.Select((parameter, i) => (Line: i + 1, parameter, Values: Values(parameter)))
            .Where(found => found.Values.Count is > 0 and <= MostValues)
            .Select(found => new PreambleLine(found.Line, $"{found.parameter.Group}:{found.parameter.Name}: {string.Join(", ", found.Values)}")),
    ];

    private static IReadOnlyList<string> Values(C3dParameter parameter) => parameter.Type == C3dParameterType.Text
        ? parameter.Texts()
        : [.. parameter.Numbers().Take(MostValues + 1).Select(number => number.ToString("R", CultureInfo.InvariantCulture))];
}
