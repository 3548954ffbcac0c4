using SwingStudy.Domain.Sources;
using SwingStudy.Domain.Studies;
using SwingStudy.Domain.Variables;

namespace SwingStudy.Pipeline.Analyse;

/// <summary>What the agreement stage may know of the declarations.</summary>
/// <param name="Sources">Sources of swings, preferred ones first.</param>
/// <param name="Variables">Numeric variables that at least two of them deliver, with their unit.</param>
/// <param name="Confidence">Confidence level as a share.</param>
internal sealed record AgreementSettings(IReadOnlyList<string> Sources, IReadOnlyList<KeyValuePair<string, string?>> Variables, double Confidence)
{
    public static AgreementSettings Of(StudySetup setup)
    {
        var mappings = setup.Mappings.Where(mapping => mapping.Rows == RowMeaning.Swings).ToList();
        List<string> names = [.. mappings.Select(mapping => mapping.Source).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
        List<string> sources = [.. setup.Declaration.PreferredSources.Where(names.Contains).Distinct(StringComparer.Ordinal)];
        var shared = mappings.SelectMany(mapping => mapping.Values.Keys.Select(variable => (mapping.Source, variable))).Distinct()
            .GroupBy(pair => pair.variable, StringComparer.Ordinal).Where(group => group.Count() > 1).Select(group => group.Key).ToHashSet(StringComparer.Ordinal);
        return new AgreementSettings(
            [.. sources, .. names.Except(sources)],
            [.. setup.Dictionary.Variables.Where(variable => variable.Type == VariableType.Number && shared.Contains(variable.Name))
                .Select(variable => KeyValuePair.Create(variable.Name, variable.Unit))],
            setup.Protocol.Analysis.Confidence);
    }
}
