using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace SwingStudy.Ingestion.Readers.Delimited;

/// <summary>Divides text into records and cells by RFC 4180, and goes on behind what the standard does not allow.</summary>
/// <remarks>
/// Written here rather than taken from a package because of what a bad record must leave behind: memory stays bounded whatever stands
/// in a file, an open quote costs one line and not the rest, each physical line is accounted for and the raw text survives.
/// A cell is quoted when a quote is its first character; elsewhere a quote is a sign like any other. Line breaks are CR LF, LF and CR.
/// </remarks>
internal sealed class Tokeniser
{
    /// <summary>Characters that the text of a block must have room for behind its end.</summary>
    public const int Margin = 32;

    /// <summary>No character: Unicode reserves it.</summary>
    private const char NoCharacter = '\uFFFF';

    private readonly char _delimiter;
    private readonly char _quote;
    private readonly bool _isByte;
    private readonly RecordSink _sink;

    /// <summary>Splits at <paramref name="delimiter"/> (null: one cell a record) and hands records to <paramref name="sink"/>.</summary>
    public Tokeniser(char? delimiter, bool hasQuotes, int line, RecordSink sink)
    {
        _delimiter = delimiter ?? NoCharacter;
        _quote = hasQuotes ? '"' : NoCharacter;
        _isByte = _delimiter < byte.MaxValue;
        Line = line;
        _sink = sink;
    }

    /// <summary>Line on which the next record starts, from 1.</summary>
    public int Line { get; private set; }

    /// <summary>Counts a line that was passed without being tokenised.</summary>
    public void PassLine() => Line++;

    /// <summary>Tokenises the block's text from <paramref name="from"/> up to <paramref name="length"/>, behind which there is room for one vector.</summary>
    /// <returns>Characters that are done with; the rest begins a record that ends beyond.</returns>
    public int Run(RawBlock block, int from, int length, bool isLast)
    {
        var text = block.Text;
        text.Slice(length, Margin).Clear();
        var delimiter = Vector256.Create((byte)Math.Min((int)_delimiter, byte.MaxValue));
        int record = from, cell = from, firstCell = block.CellCount, breaks = 0;
        for (var at = from; at < length; at += Margin)
        {
            var (delimiters, lineBreaks, quotes) = Special(text, at, delimiter);
            if (quotes == 0 && _isByte)
            {
                while (true)
                {
                    var upToBreak = lineBreaks ^ (lineBreaks - 1);
                    cell = block.AddCells(at, delimiters & upToBreak, cell);
                    if (lineBreaks == 0)
                        break;
                    var p = at + BitOperations.TrailingZeroCount(lineBreaks);
                    delimiters &= ~upToBreak;
                    lineBreaks &= lineBreaks - 1;
                    if (p < cell)
                        continue;
                    var next = EndOfBreak(text, p, length, isLast);
                    if (next < 0)
                    {
                        block.CellCount = firstCell;
                        return record;
                    }

                    block.AddCell(cell, p - cell);
                    EndRecord(block, ref record, p, next, ref firstCell, ref breaks);
                    cell = record;
                }

                continue;
            }

            var mask = delimiters | lineBreaks | quotes;
            while (mask != 0)
            {
                var p = at + BitOperations.TrailingZeroCount(mask);
                mask &= mask - 1;
                var sign = text[p];
                if (sign == _delimiter)
                {
                    block.AddCell(cell, p - cell);
                    cell = p + 1;
                }
                else if (sign == _quote)
                {
                    if (p != cell)
                        continue;
                    var quoted = QuotedCell.Read(text[..length], p, _delimiter, isLast);
                    if (quoted.State == QuotedState.Incomplete && length - record < ReaderLimits.RecordCharacters)
                        return record;
                    if (quoted.State != QuotedState.Closed)
                    {
                        block.CellCount = firstCell;
                        if (!RejectLine(block, text, length, ref record, isLast, quoted.State))
                            return record;
                        (cell, firstCell, breaks) = (record, block.CellCount, 0);
                        at = record - Margin;
                        break;
                    }

                    breaks += quoted.LineBreaks;
                    if (quoted.HasEscapes)
                        block.AddUnescaped(text[(p + 1)..quoted.End]);
                    else
                        block.AddCell(p + 1, quoted.End - p - 1);
                    var end = quoted.End + 1;
                    if (end < length && text[end] == _delimiter)
                    {
                        cell = end + 1;
                    }
                    else
                    {
                        var next = end < length ? EndOfBreak(text, end, length, isLast) : end;
                        if (next < 0)
                        {
                            block.CellCount = firstCell;
                            return record;
                        }

                        EndRecord(block, ref record, end, next, ref firstCell, ref breaks);
                        cell = record;
                    }

                    at = cell - Margin;
                    break;
                }
                else if (p >= cell && sign is ('\n' or '\r'))
                {
                    var next = EndOfBreak(text, p, length, isLast);
                    if (next < 0)
                    {
                        block.CellCount = firstCell;
                        return record;
                    }

                    block.AddCell(cell, p - cell);
                    EndRecord(block, ref record, p, next, ref firstCell, ref breaks);
                    cell = record;
                }
            }
        }

        if (isLast && record < length)
        {
            block.AddCell(cell, length - cell);
            EndRecord(block, ref record, length, length, ref firstCell, ref breaks);
        }
        else
        {
            block.CellCount = firstCell;
        }

        return record;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static (uint Delimiters, uint LineBreaks, uint Quotes) Special(Span<char> text, int at, Vector256<byte> delimiter)
    {
        ref var start = ref Unsafe.As<char, ushort>(ref MemoryMarshal.GetReference(text));
        var low = Vector256.LoadUnsafe(ref start, (nuint)at);
        var high = Vector256.LoadUnsafe(ref start, (nuint)(at + Vector256<ushort>.Count));
        var bytes = Vector256.NarrowWithSaturation(low, high);
        var lineBreaks = Vector256.Equals(bytes, Vector256.Create((byte)'\n')) | Vector256.Equals(bytes, Vector256.Create((byte)'\r'));
        return (
            Vector256.Equals(bytes, delimiter).ExtractMostSignificantBits(),
            lineBreaks.ExtractMostSignificantBits(),
            Vector256.Equals(bytes, Vector256.Create((byte)'"')).ExtractMostSignificantBits());
    }

    /// <summary>The position behind a line break, or -1 when its second half may follow in the next block.</summary>
    public static int EndOfBreak(ReadOnlySpan<char> text, int at, int length, bool isLast)
    {
        if (text[at] == '\n')
            return at + 1;
        if (at + 1 == length)
            return isLast ? length : -1;
        return text[at + 1] == '\n' ? at + 2 : at + 1;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void EndRecord(RawBlock block, ref int record, int end, int next, ref int firstCell, ref int breaks)
    {
        _sink.Take(block, record, end - record, firstCell, Line);
        Line += 1 + breaks;
        (record, firstCell, breaks) = (next, block.CellCount, 0);
    }

    /// <summary>Rejects the physical line that begins at <paramref name="record"/>; false when its end is not in the block yet.</summary>
    private bool RejectLine(RawBlock block, Span<char> text, int length, ref int record, bool isLast, QuotedState state)
    {
        var distance = text[record..length].IndexOfAny('\n', '\r');
        var next = distance >= 0 ? EndOfBreak(text, record + distance, length, isLast) : isLast ? length : -1;
        if (next < 0)
            return false;
        _sink.Reject(block, text[record..(distance >= 0 ? record + distance : length)], Line, state);
        Line++;
        record = next;
        return true;
    }
}
