using SwingStudy.Domain.Sources;
using SwingStudy.Domain.Studies;
using SwingStudy.Domain.Variables;
using SwingStudy.Pipeline.Measure.Curves;

namespace SwingStudy.Pipeline.Analyse;

/// <summary>What the agreement stage may know of the declarations.</summary>
/// <param name="Sources">Sources of swings, preferred ones first.</param>
/// <param name="Variables">Numeric variables that at least two of them deliver, in a column or through curves, with their unit.</param>
/// <param name="Confidence">Confidence level as a share.</param>
internal sealed record AgreementSettings(IReadOnlyList<string> Sources, IReadOnlyList<KeyValuePair<string, string?>> Variables, double Confidence)
{
    public static AgreementSettings Of(StudySetup setup)
    {
        var mappings = setup.Mappings.Where(mapping => mapping.Rows is RowMeaning.Swings or RowMeaning.Recordings).ToList();
        List<string> names = [.. mappings.Select(mapping => mapping.Source).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
        List<string> sources = [.. setup.Declaration.PreferredSources.Where(names.Contains).Distinct(StringComparer.Ordinal)];
        var shared = mappings.SelectMany(mapping => Delivered(mapping).Select(variable => (mapping.Source, variable))).Distinct()
            .GroupBy(pair => pair.variable, StringComparer.Ordinal).Where(group => group.Count() > 1).Select(group => group.Key).ToHashSet(StringComparer.Ordinal);
        return new AgreementSettings(
            [.. sources, .. names.Except(sources)],
            [.. setup.Dictionary.Variables.Where(variable => variable.Type == VariableType.Number && shared.Contains(variable.Name))
                .Select(variable => KeyValuePair.Create(variable.Name, variable.Unit))],
            setup.Protocol.Analysis.Confidence);
    }

    /// <summary>What a source delivers: its columns, and what is computed from the curves that it records.</summary>
    private static IEnumerable<string> Delivered(SourceMapping mapping)
    {
        var channels = mapping.Recording?.Channels.Keys ?? [];
        var (hasForces, hasMarks) = (channels.Any(channel => channel.Contains("_force_", StringComparison.Ordinal)), mapping.Recording?.Landmarks.Count > 0);
        return mapping.Values.Keys.Concat(CurveMeasure.All.Where(measure => measure.IsOfForces ? hasForces : hasMarks).Select(measure => measure.Name));
    }
}
