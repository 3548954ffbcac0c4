namespace SwingStudy.Storage.Tables.Columnar;

/// <summary>Order of texts by code point, which is the order of their UTF-8 bytes that Parquet and Delta statistics use.</summary>
internal static class CodePointOrder
{
    /// <summary>Negative, zero or positive as <paramref name="a"/> stands before, with or after <paramref name="b"/>.</summary>
    internal static int Compare(string a, string b)
    {
        var same = a.AsSpan().CommonPrefixLength(b);
        if (same == a.Length || same == b.Length)
            return a.Length.CompareTo(b.Length);
        var (x, y) = (a[same], b[same]);
        // UTF-16 puts surrogates below U+E000 to U+FFFF, code point order puts them above.
        return char.IsSurrogate(x) == char.IsSurrogate(y) ? x.CompareTo(y) : Rank(x).CompareTo(Rank(y));
    }

    private static int Rank(char c) => char.IsSurrogate(c) ? 0x10000 : c;
}
