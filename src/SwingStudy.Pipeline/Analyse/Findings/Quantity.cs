using System.Globalization;
using SwingStudy.Domain.Units;

namespace SwingStudy.Pipeline.Analyse.Findings;

/// <summary>Differences of an outcome in the words of statements: display unit, as many decimals as the uncertainty leaves meaning.</summary>
/// <param name="factor">Canonical to display unit, for differences.</param>
/// <param name="symbol">Sign of the display unit; empty without unit.</param>
/// <param name="decimals">Decimals.</param>
internal sealed class Quantity(double factor, string symbol, int decimals)
{
    /// <summary>Words for an outcome whose uncertainty is about <paramref name="scale"/>, canonical unit: two of its digits are shown.</summary>
    public static Quantity For(OutcomeSetting outcome, double scale)
    {
        var (own, shown) = (Parsed(outcome.Unit), Parsed(outcome.DisplayUnit));
        var factor = own is not null && shown is not null && UnitConversion.Between(own, shown) is { } conversion ? conversion.Factor : 1;
        var symbol = (factor == 1 && outcome.Unit != outcome.DisplayUnit ? own : shown)?.Symbol ?? "";
        return new Quantity(factor, symbol, Digits.DecimalsFor(scale * factor, otherwise: 2));
    }

    /// <summary>"2.1 mph", "−3.5°" without its sign where <paramref name="magnitude"/> is asked for.</summary>
    public string Text(double difference, bool magnitude = false)
    {
        var number = Number(magnitude ? Math.Abs(difference) : difference);
        return symbol.Length == 0 ? number : symbol[0] == '°' && symbol.Length == 1 ? number + symbol : $"{number} {symbol}";
    }

    /// <summary>"0.9 to 3.3 mph".</summary>
    public string Range(double low, double high) => $"{Number(low)} to {Text(high)}";

    private string Number(double difference)
    {
        var text = Math.Abs(difference * factor).ToString($"F{decimals}", CultureInfo.InvariantCulture);
        return difference < 0 && text.Any(c => c is >= '1' and <= '9') ? "−" + text : text;
    }

    private static Unit? Parsed(string? code) => code is null ? null : UnitCatalogue.ParseCode(code);
}
