namespace SwingStudy.Domain.Findings;

/// <summary>One reason of a finding: a stable word, and a sentence for people. In tables it is the line <c>code: text</c>.</summary>
/// <param name="Code">One of <see cref="ReasonCode"/>; in a finding about the study, a player.</param>
/// <param name="Text">What is the case, with its numbers.</param>
public sealed record Reason(string Code, string Text)
{
    /// <summary>What it is about.</summary>
    public ReasonKind Kind => ReasonCode.KindOf(Code);

    /// <summary>Reads a line; a line without code is evidence.</summary>
    public static Reason Parse(string line)
    {
        var end = line.IndexOf(": ", StringComparison.Ordinal);
        return end > 0 && !line[..end].Contains(' ', StringComparison.Ordinal) ? new Reason(line[..end], line[(end + 2)..]) : new Reason("", line);
    }

    /// <inheritdoc/>
    public override string ToString() => Code.Length == 0 ? Text : $"{Code}: {Text}";
}
