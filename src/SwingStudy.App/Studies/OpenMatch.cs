using System.Globalization;
using SwingStudy.Reporting.Documents;

namespace SwingStudy.App.Studies;

/// <summary>A capture whose swing a person has to decide.</summary>
/// <param name="Capture">The capture.</param>
/// <param name="Method">Why it was not linked.</param>
/// <param name="Session">Its session, where that is known.</param>
/// <param name="Candidate">The capture of another device that it would join.</param>
/// <param name="Swing">The swing of that capture.</param>
/// <param name="ResidualSeconds">Time between the two after the best clock.</param>
/// <param name="Confidence">How sure that clock is, 0 to 1.</param>
internal sealed record OpenMatch(string Capture, string Method, string? Session, string? Candidate, string? Swing, double? ResidualSeconds, double? Confidence)
{
    /// <summary>The evidence in one line, with the command that decides.</summary>
    public string Text => string.Create(CultureInfo.InvariantCulture, $"{Capture}: {LinkWords.Of(Method)}{Evidence}: 'swingstudy decide match {Capture} {Swing ?? "SWING"} --reason ...', or none in place of the swing");

    private string Evidence => (Swing ?? Candidate) is { } near
        ? string.Create(CultureInfo.InvariantCulture, $", nearest {near}{(ResidualSeconds is { } left ? string.Create(CultureInfo.InvariantCulture, $" ({left:0.000} s)") : "")}{(Confidence is { } sure ? string.Create(CultureInfo.InvariantCulture, $", confidence {sure:0.00}") : "")}")
        : "";
}
