namespace SwingStudy.Ingestion.Intake;

/// <summary>Order of names as people count: <c>shot2</c> before <c>shot10</c>. Total: names that differ are never equal.</summary>
internal sealed class NaturalOrder : IComparer<string>
{
    public static NaturalOrder Instance { get; } = new();

    public int Compare(string? x, string? y)
    {
        var a = x.AsSpan();
        var b = y.AsSpan();
        while (!a.IsEmpty && !b.IsEmpty)
        {
            var runA = Run(a);
            var runB = Run(b);
            var order = char.IsAsciiDigit(runA[0]) && char.IsAsciiDigit(runB[0]) ? CompareDigits(runA, runB) : runA.CompareTo(runB, StringComparison.OrdinalIgnoreCase);
            if (order != 0)
                return order;
            a = a[runA.Length..];
            b = b[runB.Length..];
        }

        return a.Length != b.Length ? a.Length.CompareTo(b.Length) : string.CompareOrdinal(x, y);
    }

    private static ReadOnlySpan<char> Run(ReadOnlySpan<char> text)
    {
        var digits = char.IsAsciiDigit(text[0]);
        var length = 1;
        while (length < text.Length && char.IsAsciiDigit(text[length]) == digits)
            length++;
        return text[..length];
    }

    private static int CompareDigits(ReadOnlySpan<char> a, ReadOnlySpan<char> b)
    {
        var plainA = a.TrimStart('0');
        var plainB = b.TrimStart('0');
        return plainA.Length != plainB.Length ? plainA.Length.CompareTo(plainB.Length) : plainA.SequenceCompareTo(plainB);
    }
}
