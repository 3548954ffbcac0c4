using SwingStudy.Domain.Findings;

namespace SwingStudy.Pipeline.Analyse.Findings;

/// <summary>Something that could explain a change otherwise, or limits what can be said.</summary>
/// <param name="Code">Stable kebab-case word.</param>
/// <param name="Text">A sentence for people.</param>
/// <param name="ForbidsSupport">Whether a verdict of 'supported' cannot stand beside it.</param>
/// <param name="Mend">What would rule it out, as a request; null when only more data or another design would.</param>
internal sealed record Caveat(string Code, string Text, bool ForbidsSupport, string? Mend = null)
{
    /// <summary>A line of the <c>reasons</c> column.</summary>
    public Reason AsReason => new(Code, Text);
}
