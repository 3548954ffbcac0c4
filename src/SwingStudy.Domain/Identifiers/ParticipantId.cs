namespace SwingStudy.Domain.Identifiers;

/// <summary>Pseudonym of one participant, such as <c>P01</c>: an upper-case letter followed by digits or letters. Never a name.</summary>
public readonly record struct ParticipantId
{
    private readonly string? _text;

    /// <summary>Takes a pseudonym.</summary>
    /// <exception cref="ArgumentException"><paramref name="text"/> does not fit; see <see cref="IsValid"/>.</exception>
    public ParticipantId(string text) =>
        _text = IsValid(text) ? text : throw new ArgumentException($"'{text}' is not a participant code such as P01.", nameof(text));

    /// <summary>An upper-case ASCII letter, then 1 to 15 ASCII letters or digits: safe in file names, partitions and SQL.</summary>
    public static bool IsValid(string? text) =>
        text is { Length: >= 2 and <= 16 } && char.IsAsciiLetterUpper(text[0]) && text.All(char.IsAsciiLetterOrDigit);

    /// <summary>The code; empty for the default value, which names nobody.</summary>
    public override string ToString() => _text ?? "";
}
