using System.Globalization;
using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace SwingStudy.Ingestion.Mapping.Cells;

/// <summary>Reads numbers written with a known decimal sign, each as the double nearest to its text.</summary>
/// <remarks>
/// Up to 15 significant digits and 22 decimals are read as whole number / power of ten: both are exact doubles, so the one division rounds
/// correctly (Clinger 1990, How to read floating point numbers accurately). Everything longer goes through <see cref="double.Parse(string)"/>,
/// which rounds correctly too. Signs, digits, the decimal sign, declared thousands in groups of three and a power of ten are all that is allowed:
/// words such as NaN and Infinity are no measurements.
/// </remarks>
internal readonly struct NumberText(char decimalSign, char? thousands)
{
    private const char MinusSign = '\u2212';
    private const int ExactDigits = 15;
    private const int MaximumLength = 128;

    private static readonly double[] PowersOfTen =
    [
        1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22,
    ];

    /// <summary>The reader of cells with as many decimals as this one.</summary>
    public FixedDecimals Like(ReadOnlySpan<char> cell) => FixedDecimals.Like(cell, decimalSign);

    /// <summary>Reads a trimmed text; false when it is no finite number in this notation.</summary>
    public bool TryRead(ReadOnlySpan<char> text, out double value)
    {
        var minus = text.Length > 0 && text[0] == '-' ? 1 : 0;
        return (text.Length - minus is >= 4 and <= 8 && TryReadWord(text, minus, out value)) || TryReadEach(text, out value);
    }

    /// <summary>The most usual case: four to eight digits and decimal sign behind an optional minus, all characters as the bytes of one word.</summary>
    /// <remarks>
    /// The word is filled from its last byte, with zeros before the number. The digits before the decimal sign move over it; then neighbouring digits,
    /// pairs and fours are joined by multiplications. Source: Lemire (2021), Number parsing at a gigabyte per second, Softw Pract Exper 51:1700.
    /// </remarks>
    private bool TryReadWord(ReadOnlySpan<char> text, int minus, out double value)
    {
        const ulong zeros = 0x3030_3030_3030_3030, ones = 0x0101_0101_0101_0101, highs = 0x8080_8080_8080_8080, uppers = 0xF0F0_F0F0_F0F0_F0F0;
        ref var first = ref Unsafe.As<char, byte>(ref Unsafe.Add(ref MemoryMarshal.GetReference(text), minus));
        var length = text.Length - minus;
        var characters = Vector128.Create(Unsafe.ReadUnaligned<ulong>(ref first), Unsafe.ReadUnaligned<ulong>(ref Unsafe.AddByteOffset(ref first, (nint)((length - 4) * sizeof(char))))).AsUInt16();
        var bytes = Vector128.NarrowWithSaturation(characters, characters).AsUInt64().ToScalar();
        var free = 8 * (8 - length);
        var word = (bytes & 0xFFFF_FFFF_0000_0000) | ((ulong)(uint)bytes << free) | (zeros & ((1UL << free) - 1));

        // The lowest byte that the decimal sign leaves zero is found exactly; a second one would fail below as no digit.
        var differs = word ^ (ones * decimalSign);
        var signs = (differs - ones) & ~differs & highs;
        var decimals = 0;
        if (signs != 0)
        {
            var place = BitOperations.TrailingZeroCount(signs) & ~7;
            var before = (1UL << place) - 1;
            word = (word & ~((before << 8) | 0xFF)) | ((word & before) << 8) | '0';
            decimals = 7 - (place >> 3);
        }

        Unsafe.SkipInit(out value);
        if (((word & uppers) | (((word + 0x0606_0606_0606_0606) & uppers) >> 4)) != 0x3333_3333_3333_3333)
            return false;
        word -= zeros;
        word = (word * 10) + (word >> 8);
        var digits = (uint)((((word & 0x0000_00FF_0000_00FF) * 0x000F_4240_0000_0064) + (((word >> 16) & 0x0000_00FF_0000_00FF) * 0x0000_2710_0000_0001)) >> 32);
        value = digits / PowersOfTen[decimals];
        value = BitConverter.Int64BitsToDouble(BitConverter.DoubleToInt64Bits(value) ^ ((long)minus << 63));
        return true;
    }

    /// <summary>The usual case, character by character.</summary>
    private bool TryReadEach(ReadOnlySpan<char> text, out double value)
    {
        var at = 0;
        var negative = false;
        if (text.Length > 0 && text[0] is '-' or '+' or MinusSign)
        {
            negative = text[0] != '+';
            at = 1;
        }

        // Eighteen digits cannot overflow the sum below, and devices write fewer.
        if (text.Length - at is 0 or > 18)
            return TryReadLong(text, out value);
        ulong digits = 0;
        var decimals = -1;
        for (var i = at; i < text.Length; i++)
        {
            var digit = (uint)(text[i] - '0');
            if (digit <= 9)
            {
                digits = (digits * 10) + digit;
            }
            else if (text[i] == decimalSign && decimals < 0)
            {
                decimals = text.Length - i - 1;
            }
            else
            {
                return TryReadLong(text, out value);
            }
        }

        if (digits >= 1_000_000_000_000_000 || (decimals >= 0 && text.Length - at == 1))
            return TryReadLong(text, out value);
        value = decimals > 0 ? digits / PowersOfTen[decimals] : digits;
        if (negative)
            value = -value;
        return true;
    }

    /// <summary>The general case: long digits, thousands, powers of ten.</summary>
    private bool TryReadLong(ReadOnlySpan<char> text, out double value)
    {
        value = double.NaN;
        if (text.Length is 0 or > MaximumLength)
            return false;
        Span<char> plain = stackalloc char[MaximumLength];
        var length = 0;
        var state = new Grouping();
        foreach (var character in text)
        {
            if (char.IsAsciiDigit(character))
            {
                state.Digit();
                plain[length++] = character;
            }
            else if (character == decimalSign && state.MayTakeDecimal)
            {
                state.Decimal();
                plain[length++] = '.';
            }
            else if (thousands is { } sign && IsThousands(character, sign) && state.TakesGroup())
            {
                continue;
            }
            else if (character is 'e' or 'E' && state.MayTakeExponent)
            {
                state.Exponent();
                plain[length++] = 'E';
            }
            else if (character is '-' or '+' or MinusSign && (length == 0 || plain[length - 1] == 'E'))
            {
                plain[length++] = character == '+' ? '+' : '-';
            }
            else
            {
                return false;
            }
        }

        return state.GroupsEndWell
            && double.TryParse(plain[..length], NumberStyles.Float, CultureInfo.InvariantCulture, out value)
            && double.IsFinite(value);
    }

    /// <summary>A declared blank stands for all blanks that people type between thousands.</summary>
    public static bool IsThousands(char character, char sign) =>
        character == sign || (sign is '\'' or '’' && character is '\'' or '’') || (sign == ' ' && character is '\u00A0' or '\u202F' or '\u2009');

    /// <summary>Counts the digits between thousands signs: one to three first, then exactly three.</summary>
    private struct Grouping
    {
        private int _digits;
        private bool _grouped;
        private bool _past;
        private bool _exponent;

        public readonly bool MayTakeDecimal => !_past && !_exponent && (!_grouped || _digits == 3);

        public readonly bool MayTakeExponent => !_exponent;

        public readonly bool GroupsEndWell => !_grouped || _past || _exponent || _digits == 3;

        public void Digit()
        {
            if (!_past && !_exponent)
                _digits++;
        }

        public void Decimal() => _past = true;

        public void Exponent() => _exponent = true;

        public bool TakesGroup()
        {
            if (_past || _exponent || (_grouped ? _digits != 3 : _digits is 0 or > 3))
                return false;
            _grouped = true;
            _digits = 0;
            return true;
        }
    }
}
