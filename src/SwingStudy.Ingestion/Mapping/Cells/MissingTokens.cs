using System.Buffers;

namespace SwingStudy.Ingestion.Mapping.Cells;

/// <summary>The texts that stand for nothing read: blank cells always do, declared tokens ignoring case.</summary>
internal sealed class MissingTokens
{
    private readonly string[] _tokens;
    private readonly int _longest;

    public MissingTokens(IEnumerable<string> ofMapping, IEnumerable<string> ofColumn)
    {
        _tokens = [.. ofMapping.Concat(ofColumn).Select(token => token.Trim()).Where(token => token.Length > 0).Distinct(StringComparer.OrdinalIgnoreCase)];
        _longest = _tokens.Length == 0 ? 0 : _tokens.Max(token => token.Length);
        MayBeNumber = _tokens.Any(token => token.AsSpan().ContainsAny(SearchValues.Create("0123456789")));
    }

    /// <summary>Whether some token looks like a number (9999, 0), so that numbers must be compared as well.</summary>
    public bool MayBeNumber { get; }

    /// <summary>Whether a trimmed cell stands for nothing.</summary>
    public bool Hold(ReadOnlySpan<char> trimmed)
    {
        if (trimmed.IsEmpty)
            return true;
        if (trimmed.Length > _longest)
            return false;
        foreach (var token in _tokens)
        {
            if (trimmed.Equals(token, StringComparison.OrdinalIgnoreCase))
                return true;
        }

        return false;
    }
}
