using System.Buffers;

namespace SwingStudy.Ingestion.Intake;

/// <summary>Puts codes in place of names in texts that are stored outside the originals: raw rows of rejects, preambles, messages.</summary>
internal sealed class NameMask
{
    private readonly (string Alias, string Code)[] _names;
    private readonly SearchValues<string> _any;
    private readonly HashedNames? _hashed;

    /// <summary>Takes the names to mask and what to put in their place; and names of which only hashes can be read, where there are such.</summary>
    public NameMask(IEnumerable<(string Alias, string Code)> names, HashedNames? hashed = null)
    {
        _hashed = hashed;
        _names = [.. names.Where(name => name.Alias.Trim().Length > 0 && !string.Equals(name.Alias, name.Code, StringComparison.OrdinalIgnoreCase))
            .DistinctBy(name => name.Alias, StringComparer.OrdinalIgnoreCase).OrderByDescending(name => name.Alias.Length)];
        _any = SearchValues.Create([.. _names.Select(name => name.Alias)], StringComparison.OrdinalIgnoreCase);
    }

    /// <summary>The text with each name, where it stands as a word of its own, replaced by its code.</summary>
    public string Of(string text)
    {
        text = _hashed?.Mask(text) ?? text;
        if (_names.Length == 0 || !text.AsSpan().ContainsAny(_any))
            return text;
        foreach (var (alias, code) in _names)
            text = Replace(text, alias, code);
        return text;
    }

    private static string Replace(string text, string alias, string code)
    {
        for (var at = 0; (at = text.IndexOf(alias, at, StringComparison.OrdinalIgnoreCase)) >= 0;)
        {
            var end = at + alias.Length;
            if ((at > 0 && char.IsLetterOrDigit(text[at - 1])) || (end < text.Length && char.IsLetterOrDigit(text[end])))
            {
                at++;
                continue;
            }

            text = string.Concat(text.AsSpan(0, at), code, text.AsSpan(end));
            at += code.Length;
        }

        return text;
    }
}
