using SwingStudy.Domain.Protocols;
using SwingStudy.Domain.Studies;
using SwingStudy.Pipeline.Measure.Curves;
using SwingStudy.Pipeline.Measure.Swings;

namespace SwingStudy.Pipeline.Measure;

/// <summary>What measuring may know of the declarations.</summary>
/// <param name="PreferredSources">Sources in order of preference: the first that delivers a variable of a swing gives its value.</param>
/// <param name="Signals">How curves are processed.</param>
/// <param name="Plates">Declared places of force plates.</param>
/// <param name="Units">Units of the dictionary's variables that curves can give.</param>
internal sealed record MeasureSettings(
    IReadOnlyList<string> PreferredSources, SignalPlan Signals, IReadOnlyList<PlatePlace> Plates, IReadOnlyDictionary<string, string?> Units)
{
    public static MeasureSettings Of(StudySetup setup) => new(
        setup.Declaration.PreferredSources,
        setup.Protocol.Signals with { Why = "" },
        PlacesOf(setup),
        setup.Dictionary.Variables.Where(variable => CurveMeasure.All.Any(measure => measure.Name == variable.Name) || variable.Name.StartsWith("t_", StringComparison.Ordinal))
            .OrderBy(variable => variable.Name, StringComparer.Ordinal).ToDictionary(variable => variable.Name, variable => variable.Unit));

    private static IReadOnlyList<PlatePlace> PlacesOf(StudySetup setup) =>
    [
        .. setup.Mappings.SelectMany(mapping => mapping.Plates.Select(plate => new PlatePlace(
                mapping.Source, plate.Key, plate.Value)))
            .OrderBy(place => place.Source, StringComparer.Ordinal).ThenBy(place => place.Plate, StringComparer.Ordinal),
    ];
}
