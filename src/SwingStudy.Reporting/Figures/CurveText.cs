using System.Globalization;
using SwingStudy.Domain.Curves;
using SwingStudy.Domain.Units;
using SwingStudy.Reporting.Rows;

namespace SwingStudy.Reporting.Figures;

/// <summary>Words for curves.</summary>
internal static class CurveText
{
    /// <summary>What a person calls a channel.</summary>
    public static string Title(string channel) => SwingChannels.TitleOf(channel);

    /// <summary>Sign of a unit; empty for plain numbers.</summary>
    public static string Symbol(string? unit) => unit is null or "1" ? "" : UnitCatalogue.ParseCode(unit)?.Symbol ?? unit;

    /// <summary>A span in words: where it lies in the swing, or when.</summary>
    public static string Span(CurveTestRow row, bool isPhases)
    {
        var (from, to) = isPhases ? (Moment(row.From), Moment(row.To)) : (Milliseconds(row.From), Milliseconds(row.To));
        return (from == to ? from : $"{from} to {to}") + (isPhases ? "" : " ms from impact");
    }

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
