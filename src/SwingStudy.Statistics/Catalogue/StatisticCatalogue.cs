using System.Collections.Frozen;

namespace SwingStudy.Statistics.Catalogue;

/// <summary>Every statistic there is, by its method word.</summary>
/// <remarks>A family declares its entries in its own folder and is listed once in <see cref="All"/>.</remarks>
public static class StatisticCatalogue
{
    /// <summary>All statistics, family by family in the order declared.</summary>
    public static IReadOnlyList<StatisticDefinition> All { get; } =
    [
        .. Description.DescriptionEntries.All,
        .. EffectSizes.EffectSizeEntries.All,
        .. Reliability.ReliabilityEntries.All,
        .. Reliability.ReliabilityTables.All,
        .. Change.ChangeEntries.All,
        .. Change.SessionEntries.All,
        .. Group.GroupEntries.All,
        .. Group.GroupTables.All,
        .. Group.MultiplicityEntries.All,
        .. SingleCase.OverlapEntries.All,
        .. SingleCase.SeriesEntries.All,
        .. Resampling.ResamplingEntries.All,
        .. Resampling.MultipleBaselineEntries.All,
        .. Resampling.BootstrapEntries.All,
        .. Curves.CurveEntries.All,
        .. Planning.PlanningEntries.All,
    ];

    private static readonly FrozenDictionary<string, StatisticDefinition> ByName = All.ToFrozenDictionary(d => d.Name, StringComparer.Ordinal);

    /// <summary>The statistic with this method word, or null.</summary>
    public static StatisticDefinition? Find(string name) => ByName.GetValueOrDefault(name);
}
