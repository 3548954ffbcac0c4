using SwingStudy.Domain.Sources;
using SwingStudy.Domain.Studies;
using SwingStudy.Pipeline.Link.Clocks;

namespace SwingStudy.Pipeline.Link;

/// <summary>What linking may know of the declarations.</summary>
/// <param name="PreferredSources">Sources in order of preference.</param>
/// <param name="Moments">Sources of moments, by name.</param>
/// <param name="Limits">What is plausible of two clocks, and how sure a match must be.</param>
internal sealed record LinkSettings(IReadOnlyList<string> PreferredSources, IReadOnlyList<MomentSource> Moments, ClockLimits Limits)
{
    public static LinkSettings Of(StudySetup setup) => new(
        setup.Declaration.PreferredSources,
        [.. setup.Mappings.Where(mapping => mapping is { Rows: RowMeaning.Moments, Window: not null })
            .Select(mapping => new MomentSource(mapping.Source, mapping.Window!.FromSeconds, mapping.Window.ToSeconds))
            .DistinctBy(moments => moments.Source).OrderBy(moments => moments.Source, StringComparer.Ordinal)],
        new ClockLimits());

    /// <summary>Place of a source in the order of preference; those not named come last.</summary>
    public int Rank(string source)
    {
        for (var i = 0; i < PreferredSources.Count; i++)
        {
            if (PreferredSources[i] == source)
                return i;
        }

        return int.MaxValue;
    }
}
