using ScottPlot;
using SwingStudy.Domain.Protocols;
using SwingStudy.Reporting.Rows;

namespace SwingStudy.Reporting.Figures;

/// <summary>Colours and signs of all figures.</summary>
/// <remarks>
/// The colours are the qualitative set of Okabe and Ito (2008), Color Universal Design, made to be told apart with any colour vision; no meaning
/// hangs on colour alone: verdicts differ in shape, phases in their labels.
/// </remarks>
internal static class Palette
{
    public static Color Orange { get; } = Color.FromHex("#E69F00");

    public static Color SkyBlue { get; } = Color.FromHex("#56B4E9");

    public static Color BluishGreen { get; } = Color.FromHex("#009E73");

    public static Color Blue { get; } = Color.FromHex("#0072B2");

    public static Color Vermillion { get; } = Color.FromHex("#D55E00");

    public static Color ReddishPurple { get; } = Color.FromHex("#CC79A7");

    /// <summary>Text and frames: softer than black on white, still 12 : 1.</summary>
    public static Color Ink { get; } = Color.FromHex("#2B2F33");

    /// <summary>Secondary text: 5.9 : 1 on white.</summary>
    public static Color Quiet { get; } = Color.FromHex("#5F666D");

    /// <summary>Hair lines.</summary>
    public static Color Hair { get; } = Color.FromHex("#D5D9DD");

    /// <summary>Tint of a phase behind the data.</summary>
    public static Color TintOf(PhaseRole? role) => role switch
    {
        PhaseRole.Intervention => SkyBlue.WithAlpha(0.16),
        PhaseRole.FollowUp => Orange.WithAlpha(0.14),
        PhaseRole.Transfer => ReddishPurple.WithAlpha(0.16),
        _ => Color.FromHex("#F1F2F4"),
    };

    /// <summary>Colour of what belongs to a phase.</summary>
    public static Color OfPhase(PhaseRole? role) => role switch
    {
        PhaseRole.Intervention => Blue,
        PhaseRole.FollowUp => Color.FromHex("#8F5E00"),
        PhaseRole.Transfer => Color.FromHex("#A04F7D"),
        _ => Ink,
    };

    /// <summary>Colour of words about a verdict: the verdict's colour, darkened where it would have less than 4.5 : 1 on white (WCAG 2.2, 1.4.3).</summary>
    public static Color TextOfVerdict(string? verdict) => verdict switch
    {
        Verdict.Supported => GreenText,
        Verdict.Suggestive => Color.FromHex("#005F94"),
        Verdict.CannotTell => VermillionText,
        _ => Quiet,
    };

    /// <summary>Bluish green for words: 6.1 : 1 on white.</summary>
    public static Color GreenText { get; } = Color.FromHex("#00704F");

    /// <summary>Vermillion for words: 5.7 : 1 on white.</summary>
    public static Color VermillionText { get; } = Color.FromHex("#A84A00");

    /// <summary>Colour and sign of a verdict.</summary>
    public static (Color Color, MarkerShape Shape) OfVerdict(string? verdict) => verdict switch
    {
        Verdict.Supported => (BluishGreen, MarkerShape.FilledCircle),
        Verdict.Suggestive => (Blue, MarkerShape.FilledDiamond),
        Verdict.NotShown => (Quiet, MarkerShape.FilledSquare),
        Verdict.CannotTell => (Vermillion, MarkerShape.OpenTriangleUp),
        _ => (Quiet, MarkerShape.OpenCircle),
    };
}
