using SwingStudy.Domain.Units;
using SwingStudy.Reporting.Figures;
using SwingStudy.Reporting.Rows;

namespace SwingStudy.Reporting.Documents;

/// <summary>The numbers of an effect as texts: in the outcome's display unit where the effect has the outcome's unit, else as they stand.</summary>
/// <param name="Estimate">Estimate with unit; empty when there is none.</param>
/// <param name="Interval">Interval without unit; empty when there is none.</param>
/// <param name="P">p value, never shown as zero; empty when there is none.</param>
internal sealed record EffectNumbers(string Estimate, string Interval, string P)
{
    /// <summary>The texts of a row.</summary>
    public static EffectNumbers Of(StudyReport report, EffectRow row)
    {
        Func<double, string> number = value => ValueDisplay.Number(value, 2);
        var symbol = row.Unit is { } code && code != "1" ? UnitCatalogue.ParseCode(code)?.Symbol ?? code : "";
        if (report.Dictionary.TryGet(row.Outcome, out var variable) && variable.Unit is { } unit && unit == row.Unit && unit != "1")
        {
            var display = new ValueDisplay(variable);
            number = value => display.Signed(display.Difference(value));
            symbol = display.Symbol;
        }

        return new(
            double.IsFinite(row.Estimate) ? $"{number(row.Estimate)} {symbol}".TrimEnd() : "",
            double.IsFinite(row.Low) && double.IsFinite(row.High) ? $"{number(row.Low)} to {number(row.High)}" : "",
            ProbabilityText(row.P));
    }

    /// <summary>A p value with three decimals, or that it lies below 0.001.</summary>
    internal static string ProbabilityText(double p) => !double.IsFinite(p) ? "" : p < 0.001 ? "< 0.001" : ValueDisplay.Number(p, 3);
}
