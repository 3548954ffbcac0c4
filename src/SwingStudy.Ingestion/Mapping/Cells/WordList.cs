using System.Diagnostics.CodeAnalysis;

namespace SwingStudy.Ingestion.Mapping.Cells;

/// <summary>Texts of a file and the words they stand for, ignoring case.</summary>
internal sealed class WordList
{
    private readonly Dictionary<string, string> _words = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, string>.AlternateLookup<ReadOnlySpan<char>> _bySpan;

    public WordList(IReadOnlyDictionary<string, string> words)
    {
        foreach (var (text, word) in words)
            _words.TryAdd(text.Trim(), word);
        _bySpan = _words.GetAlternateLookup<ReadOnlySpan<char>>();
    }

    /// <summary>The word that a trimmed text stands for.</summary>
    public bool TryGet(ReadOnlySpan<char> text, [NotNullWhen(true)] out string? word)
    {
        word = null;
        return _words.Count > 0 && _bySpan.TryGetValue(text, out word);
    }
}
