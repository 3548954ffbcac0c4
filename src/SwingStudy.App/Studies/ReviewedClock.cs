using System.Globalization;
using SwingStudy.Domain.Tables;

namespace SwingStudy.App.Studies;

/// <summary>One clock of one session as a person reviews it.</summary>
internal sealed record ReviewedClock(
    string Session, string Source, string Device, string Method, double? OffsetSeconds, double? Confidence, long? Matched, long? Missed, long? Extra, double? RivalSeconds, long? RivalMatched)
{
    private const string NotMade = "not-made";

    /// <summary>Whether the clock could be told.</summary>
    public bool IsMade => Method != NotMade;

    /// <summary>Whether there is something to look at.</summary>
    public bool NeedsLook => !IsMade || Missed > 0 || Extra > 0;

    /// <summary>What there is, in one line.</summary>
    public string Text => !IsMade
        ? string.Create(CultureInfo.InvariantCulture, $"{Session}: the clock of {Device} could not be told{Doubt}")
        : string.Create(CultureInfo.InvariantCulture, $"{Session}: {Device} missed {Missed} of {Matched + Missed} swings; records without a swing: {Extra}");

    private string Doubt => OffsetSeconds is { } offset
        ? string.Create(CultureInfo.InvariantCulture, $": best offset {offset:0.000} s with confidence {Confidence:0.00}{(RivalSeconds is { } rival ? string.Create(CultureInfo.InvariantCulture, $"; {RivalMatched} records fit {rival:+0.0;-0.0} s beside it") : "")}")
        : ": too few records";

    /// <summary>The clocks of some rows.</summary>
    public static IEnumerable<ReviewedClock> Of(RowSet rows) => Enumerable.Range(0, rows.Count).Select(row => new ReviewedClock(
        rows.Texts("session")[row]!, rows.Texts("source")[row]!, rows.Texts("device")[row]!, rows.Texts("method")[row]!, Known(rows.Numbers("offset_s")[row]),
        Known(rows.Numbers("confidence")[row]), rows.Integers("matched")[row], rows.Integers("missed")[row], rows.Integers("extra")[row], Known(rows.Numbers("rival_s")[row]), rows.Integers("rival_matched")[row]));

    private static double? Known(double value) => double.IsNaN(value) ? null : value;
}
