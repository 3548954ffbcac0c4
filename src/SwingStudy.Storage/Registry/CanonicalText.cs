using System.Globalization;
using System.Text;

namespace SwingStudy.Storage.Registry;

/// <summary>Texts in canonical JSON. Source: RFC 8785, 3.2.2.2.</summary>
internal static class CanonicalText
{
    /// <summary>The text in quotes: two-character escapes where JSON has them, lower-case \u00xx for other control characters, all else as it is.</summary>
    internal static string Quote(string text)
    {
        var quoted = new StringBuilder(text.Length + 2).Append('"');
        foreach (var c in text)
        {
            _ = c switch
            {
                '"' => quoted.Append("\\\""),
                '\\' => quoted.Append("\\\\"),
                '\b' => quoted.Append("\\b"),
                '\f' => quoted.Append("\\f"),
                '\n' => quoted.Append("\\n"),
                '\r' => quoted.Append("\\r"),
                '\t' => quoted.Append("\\t"),
                < ' ' => quoted.Append(CultureInfo.InvariantCulture, $"\\u{(int)c:x4}"),
                _ => quoted.Append(c),
            };
        }

        return quoted.Append('"').ToString();
    }
}
