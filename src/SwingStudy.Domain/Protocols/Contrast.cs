namespace SwingStudy.Domain.Protocols;

/// <summary>A planned comparison: the mean of <paramref name="To"/> minus the mean of <paramref name="From"/>.</summary>
/// <param name="Name">Kebab-case name; the word in the <c>contrast</c> column.</param>
/// <param name="From">Phase before.</param>
/// <param name="To">Phase after.</param>
public sealed record Contrast(string Name, string From, string To)
{
    /// <summary>Line of the protocol file, for messages.</summary>
    public int Line { get; init; }
}
