namespace SwingStudy.Reporting.Documents;

/// <summary>Texts of tables, which begin small and end open, as sentences.</summary>
internal static class Sentence
{
    /// <summary>With capital and full stop.</summary>
    public static string Of(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..] + (text.EndsWith('.') ? "" : ".");
}
