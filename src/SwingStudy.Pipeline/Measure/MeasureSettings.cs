using SwingStudy.Domain.Studies;

namespace SwingStudy.Pipeline.Measure;

/// <summary>What measuring may know of the declarations.</summary>
/// <param name="PreferredSources">Sources in order of preference: the first that delivers a variable of a swing gives its value.</param>
internal sealed record MeasureSettings(IReadOnlyList<string> PreferredSources)
{
    public static MeasureSettings Of(StudySetup setup) => new(setup.Declaration.PreferredSources);
}
