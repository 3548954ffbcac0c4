namespace SwingStudy.Pipeline.Analyse.Findings;

/// <summary>Something that could explain a change otherwise, or limits what can be said.</summary>
/// <param name="Code">Stable kebab-case word.</param>
/// <param name="Text">A sentence for people.</param>
/// <param name="ForbidsSupport">Whether a verdict of 'supported' cannot stand beside it.</param>
internal sealed record Caveat(string Code, string Text, bool ForbidsSupport)
{
    /// <summary>A line of the <c>reasons</c> column.</summary>
    public override string ToString() => $"{Code}: {Text}";
}
