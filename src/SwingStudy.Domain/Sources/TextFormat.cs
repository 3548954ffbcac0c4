namespace SwingStudy.Domain.Sources;

/// <summary>How text is encoded and divided. What is null is detected, file by file, from the whole file.</summary>
public sealed record TextFormat
{
    /// <summary>IANA name of the encoding (<c>utf-8</c>, <c>windows-1252</c>, <c>utf-16</c>); null: byte order mark, else strict UTF-8, else Windows-1252.</summary>
    public string? Encoding { get; init; }

    /// <summary>One character between cells; null: detected among comma, semicolon, tab and bar.</summary>
    public char? Delimiter { get; init; }

    /// <summary>The decimal sign, <c>.</c> or <c>,</c>; null: decided from all numeric cells of the file, and the file is held when both readings fit.</summary>
    public char? Decimal { get; init; }

    /// <summary>The sign between thousands; null: none is allowed.</summary>
    public char? Thousands { get; init; }
}
