using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Mapping.Cells;

/// <summary>
/// Reads a column as devices mostly write it, four cells at a time: up to eight digits and decimal sign behind an optional minus, with as many decimals
/// in each cell. What it reads, it reads as <see cref="NumberText"/> does.
/// </summary>
/// <remarks>
/// The last eight characters up to the end of a cell are the bytes of a word, those before the cell made zero. The decimal sign stands at one place in all
/// words. Without it, neighbouring digits, pairs and fours are joined by multiplications.
/// Source: Lemire (2021), Number parsing at a gigabyte per second, Softw Pract Exper 51:1700.
/// </remarks>
internal readonly struct FixedDecimals
{
    /// <summary>Cells that are read at a time.</summary>
    public const int Cells = 4;

    private const int MostCharacters = sizeof(ulong);
    private const ulong Zeros = 0x3030_3030_3030_3030, Nines = 0x0909_0909_0909_0909;

    private static ReadOnlySpan<double> Powers => [1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7];

    /// <summary>What is taken off each byte, so that digits become their values and the sign zero; and what may be left then.</summary>
    private readonly ulong _pattern, _most;

    /// <summary>The bytes before the sign, which move over it, and those behind it.</summary>
    private readonly ulong _before, _behind;

    private readonly double _power;
    private readonly int _decimals;

    private FixedDecimals(char decimalSign, int decimals)
    {
        _decimals = decimals;
        (_pattern, _most, _before, _behind, _power) = (Zeros, Nines, 0, ulong.MaxValue, 1);
        if (decimals == 0)
            return;
        var place = 8 * (MostCharacters - 1 - decimals);
        var sign = 0xFFUL << place;
        _pattern = (Zeros & ~sign) | ((ulong)decimalSign << place);
        _most = Nines & ~sign;
        _before = (1UL << place) - 1;
        _behind = ~(_before | sign);
        _power = Powers[decimals];
    }

    /// <summary>For cells with as many decimals as this one; for whole numbers where it has none, or more than can be read.</summary>
    public static FixedDecimals Like(ReadOnlySpan<char> cell, char decimalSign)
    {
        var decimals = cell.Length - 1 - cell.LastIndexOf(decimalSign);
        return new FixedDecimals(decimalSign, decimals < MostCharacters ? decimals : 0);
    }

    /// <summary>Reads the cells of a column in four neighbouring rows; false when one of them is written otherwise: it may be a number all the same.</summary>
    /// <param name="places">Where cells stand.</param>
    /// <param name="row">The first of the rows.</param>
    /// <param name="values">The four numbers.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public bool TryRead(in ColumnPlaces places, int row, out Vector256<double> values)
    {
        Unsafe.SkipInit(out values);
        if (!TryTake(places, row, out var a) || !TryTake(places, row + 1, out var b) || !TryTake(places, row + 2, out var c) || !TryTake(places, row + 3, out var d))
            return false;
        var word = Vector256.Create(a.Word, b.Word, c.Word, d.Word);
        if (Vector256.GreaterThanAny(word.AsByte(), Vector256.Create(_most).AsByte()))
            return false;
        word = (word & Vector256.Create(_behind)) | ((word & Vector256.Create(_before)) << 8);
        var pairs = (word.AsUInt16() * (ushort)10) + (word.AsUInt16() >> 8);
        var fours = (pairs & Vector256.Create((ushort)0xFF)).AsUInt32();
        fours = (fours * 100) + (fours >> 16);
        var eights = fours & Vector256.Create(0xFFFFU);
        eights = (eights * 10_000) + (eights.AsUInt64() >> 32).AsUInt32();
        var digits = eights.AsInt64() & Vector256.Create(0xFFFF_FFFFL);
        values = Vector256.ConvertToDouble(digits) / Vector256.Create(_power);
        values = (values.AsInt64() ^ Vector256.Create(a.Sign, b.Sign, c.Sign, d.Sign)).AsDouble();
        return true;
    }

    /// <summary>The bytes of a cell less the pattern, and the sign bit of its number.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private bool TryTake(in ColumnPlaces places, int row, out (ulong Word, long Sign) taken)
    {
        Unsafe.SkipInit(out taken);
        var (start, length) = places[row];

        // There must be a character at all, the sign must be in the cell, and the text must reach back as far as a word.
        var end = start + length;
        if (length == 0 || start < MostCharacters || (uint)end > (uint)places.Text.Length)
            return false;
        ref var text = ref Unsafe.As<char, ushort>(ref MemoryMarshal.GetReference(places.Text));
        var minus = Unsafe.Add(ref text, start) == '-' ? 1 : 0;
        length -= minus;
        if (length <= _decimals || length > MostCharacters)
            return false;
        var characters = Vector128.LoadUnsafe(ref text, (nuint)(end - MostCharacters));
        var bytes = Vector128.NarrowWithSaturation(characters, characters).AsUInt64().ToScalar();
        taken = ((bytes ^ _pattern) & (ulong.MaxValue << (8 * (MostCharacters - length))), (long)minus << 63);
        return true;
    }
}
