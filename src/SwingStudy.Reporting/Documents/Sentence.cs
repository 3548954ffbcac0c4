namespace SwingStudy.Reporting.Documents;

/// <summary>Texts of tables, which begin small and end open, as sentences.</summary>
internal static class Sentence
{
    /// <summary>With capital and full stop; a symbol, as p is one, stays small.</summary>
    public static string Of(string text) => text.Length == 0 ? text : (IsSymbol(text) ? text[0] : char.ToUpperInvariant(text[0])) + text[1..] + (text.EndsWith('.') ? "" : ".");

    private static bool IsSymbol(string text) => text.StartsWith("p ", StringComparison.Ordinal);
}
