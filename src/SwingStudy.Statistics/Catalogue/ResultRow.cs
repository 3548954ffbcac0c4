using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.Catalogue;

/// <summary>How entries write their rows. The method word is put in by <see cref="StatisticDefinition.Results"/>.</summary>
internal static class ResultRow
{
    /// <summary>The one row of a statistic that the data do not support.</summary>
    public static IReadOnlyList<NamedEstimate> None(string reason) => [new NamedEstimate("estimate", Estimate.NotDefined("", reason))];

    /// <summary>A bare number; null and infinity are undefined for the reason given.</summary>
    public static NamedEstimate Of(string quantity, double? value, string otherwise = "these data give none", string? note = null) =>
        new(quantity, value is { } number && double.IsFinite(number) ? Estimate.Of("", number) : Estimate.NotDefined("", otherwise), note);

    /// <summary>A number with an interval.</summary>
    public static NamedEstimate Of(string quantity, double value, Interval? interval, string otherwise = "these data give none") =>
        new(quantity, interval is null ? Estimate.NotDefined("", otherwise) : Estimate.Of("", value, interval: interval));

    /// <summary>A number with its p.</summary>
    public static NamedEstimate WithP(string quantity, double? value, double? p, string? note = null, double? df = null) =>
        new(quantity, value is { } number ? Estimate.Of("", number, p: p, degreesOfFreedom: df) : Estimate.NotDefined("", "these data give none"), note);
}
