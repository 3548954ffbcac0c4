using SwingStudy.Reporting.Rows;

namespace SwingStudy.App.Demo;

/// <summary>One planted effect beside what the study found.</summary>
/// <param name="Player">The player.</param>
/// <param name="Outcome">The variable.</param>
/// <param name="Contrast">The comparison.</param>
/// <param name="Unit">UCUM unit of the numbers.</param>
/// <param name="Planted">What was planted.</param>
/// <param name="Found">The estimate; null when there is none.</param>
/// <param name="Low">Lower limit of its interval.</param>
/// <param name="High">Upper limit.</param>
/// <param name="Inside">Whether the planted effect lies inside.</param>
/// <param name="Verdict">The verdict of the finding.</param>
internal sealed record PlantedComparison(
    string Player, string Outcome, string Contrast, string Unit, double Planted, double? Found, double? Low, double? High, bool Inside, string Verdict)
{
    /// <summary>Every player and planned comparison of the planted outcomes that a device of the player delivers and the protocol names.</summary>
    public static IReadOnlyList<PlantedComparison> Of(StudyReport report, PlantedTruth truth) =>
    [
        .. from outcome in new[] { truth.Outcome }.Concat(truth.Mechanisms)
           where report.Protocol.Outcomes.Any(planned => planned.Variable == outcome)
           from player in truth.Players
           where player.Has(outcome)
           from contrast in report.Protocol.Contrasts
           select Of(report, player, outcome, contrast.Name, player.EffectIn(outcome, contrast.To) - player.EffectIn(outcome, contrast.From)),
    ];

    private static PlantedComparison Of(StudyReport report, PlantedPlayer player, string outcome, string contrast, double planted)
    {
        var effect = report.Tables.Effects.FirstOrDefault(row => row.Participant == player.Code && row.Outcome == outcome && row.Contrast == contrast && row.Measure == "difference");
        var finding = report.Tables.Findings.FirstOrDefault(row => row.Participant == player.Code && row.Outcome == outcome && row.Contrast == contrast);
        var (found, low, high) = (Finite(effect?.Estimate), Finite(effect?.Low), Finite(effect?.High));
        var unit = report.Dictionary.TryGet(outcome, out var variable) ? variable.Unit ?? "1" : "1";
        return new PlantedComparison(player.Code, outcome, contrast, unit, planted, found, low, high, low <= planted && planted <= high, finding?.Verdict ?? "");
    }

    private static double? Finite(double? value) => value is { } number && double.IsFinite(number) ? number : null;
}
