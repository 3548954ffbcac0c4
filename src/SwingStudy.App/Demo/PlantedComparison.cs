using SwingStudy.Reporting.Rows;

namespace SwingStudy.App.Demo;

/// <summary>One planted effect beside what the study found.</summary>
/// <param name="Player">The player.</param>
/// <param name="Contrast">The comparison.</param>
/// <param name="Planted">What was planted, canonical unit.</param>
/// <param name="Found">The estimate; null when there is none.</param>
/// <param name="Low">Lower limit of its interval.</param>
/// <param name="High">Upper limit.</param>
/// <param name="Inside">Whether the planted effect lies inside.</param>
/// <param name="Verdict">The verdict of the finding.</param>
internal sealed record PlantedComparison(string Player, string Contrast, double Planted, double? Found, double? Low, double? High, bool Inside, string Verdict)
{
    /// <summary>Every player and planned comparison of the planted outcome.</summary>
    public static IReadOnlyList<PlantedComparison> Of(StudyReport report, PlantedTruth truth) =>
        [.. truth.Players.SelectMany(player => report.Protocol.Contrasts.Select(contrast => Of(report, truth, player, contrast.Name, contrast.From, contrast.To)))];

    private static PlantedComparison Of(StudyReport report, PlantedTruth truth, PlantedPlayer player, string contrast, string from, string to)
    {
        var planted = player.EffectIn(to) - player.EffectIn(from);
        var effect = report.Tables.Effects.FirstOrDefault(row => row.Participant == player.Code && row.Outcome == truth.Outcome && row.Contrast == contrast && row.Measure == "difference");
        var finding = report.Tables.Findings.FirstOrDefault(row => row.Participant == player.Code && row.Outcome == truth.Outcome && row.Contrast == contrast);
        var (found, low, high) = (Finite(effect?.Estimate), Finite(effect?.Low), Finite(effect?.High));
        return new PlantedComparison(player.Code, contrast, planted, found, low, high, low <= planted && planted <= high, finding?.Verdict ?? "");
    }

    private static double? Finite(double? value) => value is { } number && double.IsFinite(number) ? number : null;
}
