using System.Globalization;

namespace SwingStudy.Pipeline.Analyse.Findings;

/// <summary>Words that statements share.</summary>
internal static class Plain
{
    /// <summary>Sentence case to the middle of a sentence; abbreviations stay.</summary>
    public static string Lower(string title) =>
        title.Length > 1 && char.IsUpper(title[0]) && !char.IsUpper(title[1]) ? char.ToLowerInvariant(title[0]) + title[1..] : title;

    /// <summary>"earlier" or "later" for moments, "longer" or "shorter" for durations, "more" or "less" for sizes.</summary>
    public static string Direction(OutcomeKind kind, double change) => (kind, change > 0) switch
    {
        (OutcomeKind.Moment, true) or (OutcomeKind.MomentBefore, false) => "later",
        (OutcomeKind.Moment, false) or (OutcomeKind.MomentBefore, true) => "earlier",
        (OutcomeKind.Duration, true) => "longer",
        (OutcomeKind.Duration, false) => "shorter",
        (_, true) => "more",
        _ => "less",
    };

    /// <summary>A probability in words and figures: "very likely (96 %)".</summary>
    public static string Likely(double probability) => probability switch
    {
        > 0.99 => "almost certain (more than 99 %)",
        >= 0.95 => $"very likely ({Percent(probability)})",
        >= 0.8 => $"likely ({Percent(probability)})",
        >= 0.6 => $"more likely than not ({Percent(probability)})",
        > 0.4 => $"as likely as not ({Percent(probability)})",
        > 0.2 => $"rather unlikely ({Percent(probability)})",
        >= 0.05 => $"unlikely ({Percent(probability)})",
        >= 0.01 => $"very unlikely ({Percent(probability)})",
        _ => "almost ruled out (less than 1 %)",
    };

    /// <summary>A whole number with a true minus sign, and none before zero.</summary>
    public static string Whole(double value)
    {
        var size = Math.Round(Math.Abs(value), MidpointRounding.AwayFromZero).ToString("0", CultureInfo.InvariantCulture);
        return value < 0 && size != "0" ? "−" + size : size;
    }

    private static string Percent(double probability) => string.Create(CultureInfo.InvariantCulture, $"{100 * probability:0} %");
}
