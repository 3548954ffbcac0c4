using System.Globalization;
using SwingStudy.Domain.Curves;
using SwingStudy.Domain.Units;
using SwingStudy.Reporting.Rows;

namespace SwingStudy.Reporting.Figures;

/// <summary>Words for curves.</summary>
internal static class CurveText
{
    /// <summary>What a person calls a channel.</summary>
    public static string Title(string channel)
    {
        var title = Channels.Find(channel)?.Title ?? channel.Replace('_', ' ');
        return char.ToUpperInvariant(title[0]) + title[1..];
    }

    /// <summary>Sign of a unit; empty for plain numbers.</summary>
    public static string Symbol(string? unit) => unit is null or "1" ? "" : UnitCatalogue.ParseCode(unit)?.Symbol ?? unit;

    /// <summary>A span in words: where it lies in the swing, or when.</summary>
    public static string Span(CurveTestRow row, bool isPhases) => isPhases
        ? $"{Moment(row.From)} to {Moment(row.To)}"
        : string.Create(CultureInfo.InvariantCulture, $"{Milliseconds(row.From)} to {Milliseconds(row.To)} ms from impact");

    /// <summary>A p value.</summary>
    public static string P(double p) => p < 0.001 ? "p < 0.001" : "p = " + ValueDisplay.Number(p, p < 0.1 ? 3 : 2);

    private static string Milliseconds(double place) => ValueDisplay.Number(place, 0);

    private static string Moment(double place) => place switch
    {
        <= 0 => "the start",
        < 100 => string.Create(CultureInfo.InvariantCulture, $"{place:0} % of the backswing"),
        100 => "the top",
        < 200 => string.Create(CultureInfo.InvariantCulture, $"{place - 100:0} % of the downswing"),
        _ => "impact",
    };
}
