using SwingStudy.Domain.Sources;
using SwingStudy.Domain.Studies;

namespace SwingStudy.Pipeline.Link;

/// <summary>What linking may know of the declarations.</summary>
/// <param name="PreferredSources">Sources in order of preference.</param>
/// <param name="Moments">Sources of moments, by name.</param>
/// <param name="ToleranceSeconds">How far two devices may disagree about one swing once their clocks are aligned. Exports that cut times to whole
/// seconds spread by one second; half a second is left for late triggers.</param>
/// <param name="LeastConfidence">Below this a match of two clocks is not made.</param>
internal sealed record LinkSettings(
    IReadOnlyList<string> PreferredSources, IReadOnlyList<MomentSource> Moments, double ToleranceSeconds = 1.5, double LeastConfidence = 0.5)
{
    public static LinkSettings Of(StudySetup setup) => new(
        setup.Declaration.PreferredSources,
        [.. setup.Mappings.Where(mapping => mapping is { Rows: RowMeaning.Moments, Window: not null })
            .Select(mapping => new MomentSource(mapping.Source, mapping.Window!.FromSeconds, mapping.Window.ToSeconds))
            .DistinctBy(moments => moments.Source).OrderBy(moments => moments.Source, StringComparer.Ordinal)]);
}
