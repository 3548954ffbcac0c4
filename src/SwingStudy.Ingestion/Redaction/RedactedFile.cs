namespace SwingStudy.Ingestion.Redaction;

/// <summary>A file without a person.</summary>
/// <param name="Kind">What became of it.</param>
/// <param name="Content">Its bytes; null unless it is <see cref="RedactionKind.Cut"/>.</param>
/// <param name="Lines">Lines or rows that held the person's records, counted from 1.</param>
public sealed record RedactedFile(RedactionKind Kind, byte[]? Content, IReadOnlySet<int> Lines)
{
    internal static RedactedFile Untouched { get; } = new(RedactionKind.Untouched, null, new HashSet<int>());

    internal static RedactedFile Whole { get; } = new(RedactionKind.Whole, null, new HashSet<int>());
}
