using SwingStudy.Domain.Units;
using SwingStudy.Domain.Variables;
using SwingStudy.Reporting.Figures;
using SwingStudy.Reporting.Rows;

namespace SwingStudy.Reporting.Documents;

/// <summary>The numbers of an estimate as texts: in the outcome's display unit where it has the outcome's unit, else as they stand; as many digits as the interval warrants.</summary>
/// <param name="Estimate">Estimate with unit; empty when there is none.</param>
/// <param name="Interval">Interval without unit; empty when there is none.</param>
/// <param name="P">p value, never shown as zero; empty when there is none.</param>
internal sealed record EffectNumbers(string Estimate, string Interval, string P)
{
    /// <summary>The texts of a player's effect.</summary>
    public static EffectNumbers Of(StudyReport report, EffectRow row) => Of(report, row.Outcome, row.Unit, row.Estimate, row.Low, row.High, row.P, isChange: row.Measure != EffectRow.ShareKept);

    /// <summary>The texts of any estimate about an outcome.</summary>
    /// <param name="report">The report.</param>
    /// <param name="outcome">Variable.</param>
    /// <param name="code">UCUM code of the numbers; null for numbers without unit.</param>
    /// <param name="estimate">Estimate.</param>
    /// <param name="low">Lower limit.</param>
    /// <param name="high">Upper limit.</param>
    /// <param name="p">p value.</param>
    /// <param name="isChange">Whether the sign of the estimate is shown: a change, and no size or count.</param>
    public static EffectNumbers Of(StudyReport report, string outcome, string? code, double estimate, double low, double high, double p, bool isChange)
    {
        var (convert, symbol, otherwise) = Shown(report.Dictionary.TryGet(outcome, out var variable) ? variable : null, code);
        var decimals = Digits.DecimalsFor((convert(high) - convert(low)) / 2, otherwise);
        return new(
            double.IsFinite(estimate) ? ValueDisplay.WithUnit(isChange ? ValueDisplay.Signed(convert(estimate), decimals) : ValueDisplay.Number(convert(estimate), decimals), symbol) : "",
            RangeText(convert(low), convert(high), decimals),
            ProbabilityText(p));
    }

    /// <summary>A range in the same unit and with the same digits as the estimate of that interval; empty without limits.</summary>
    public static string RangeOf(StudyReport report, GroupRow row, double low, double high)
    {
        var (convert, _, otherwise) = Shown(report.Dictionary.TryGet(row.Outcome, out var variable) ? variable : null, row.Unit);
        return RangeText(convert(low), convert(high), Digits.DecimalsFor((convert(row.High) - convert(row.Low)) / 2, otherwise));
    }

    /// <summary>A p value with three decimals, or that it lies below 0.001.</summary>
    internal static string ProbabilityText(double p) => !double.IsFinite(p) ? "" : p < 0.001 ? "< 0.001" : ValueDisplay.Number(p, 3);

    private static string RangeText(double low, double high, int decimals) =>
        double.IsFinite(low) && double.IsFinite(high) ? $"{ValueDisplay.Number(low, decimals)} to {ValueDisplay.Number(high, decimals)}" : "";

    private static (Func<double, double> Convert, string Symbol, int Otherwise) Shown(Variable? variable, string? code)
    {
        if (variable?.Unit is { } unit && unit == code && unit != "1")
        {
            var display = new ValueDisplay(variable);
            return (display.Difference, display.Symbol, display.Decimals);
        }

        return (value => value, code is null or "1" ? "" : UnitCatalogue.ParseCode(code)?.Symbol ?? code, code == "%" ? 1 : 2);
    }
}
