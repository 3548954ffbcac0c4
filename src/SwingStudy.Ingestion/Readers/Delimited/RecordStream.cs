using System.Buffers;

namespace SwingStudy.Ingestion.Readers.Delimited;

/// <summary>Tokenises a stream block by block, in memory that does not grow with the file.</summary>
internal sealed class RecordStream(Stream stream, FoundEncoding encoding, char? delimiter, bool hasQuotes = true)
{
    private const int MostCharacters = 4 << 20;
    private const int RowsWanted = 8_192;

    /// <summary>Characters of the first block; the size of further ones follows from the length of rows.</summary>
    public int FirstCharacters { get; init; } = 256 * 1024;

    /// <summary>Line behind the last one once the blocks are read to the end.</summary>
    public int Line { get; private set; }

    /// <summary>Blocks of the records from line <paramref name="firstLine"/> on.</summary>
    public IEnumerable<RawBlock> Read(RecordSink sink, int firstLine, int columns)
    {
        using var source = new TextSource(stream, encoding, FirstCharacters);
        var tokeniser = new Tokeniser(delimiter, hasQuotes, firstLine, sink);
        var carry = ArrayPool<char>.Shared.Rent(FirstCharacters);
        var carried = 0;
        var characters = FirstCharacters;
        int cells = characters / 6, rows = characters / 64;
        var linesToPass = firstLine - 1;
        try
        {
            while (true)
            {
                var block = new RawBlock(Math.Max(characters, (carried * 2) + Tokeniser.Margin), cells, rows) { ColumnCount = columns };
                carry.AsSpan(0, carried).CopyTo(block.Text);
                var length = carried + source.Read(block.Text[carried..^Tokeniser.Margin]);
                var isLast = source.IsAtEnd;
                var passed = PassLines(block.Text[..length], isLast, ref linesToPass);
                var done = linesToPass > 0 ? passed : tokeniser.Run(block, passed, length, isLast);
                if (done == 0 && passed == 0 && length >= ReaderLimits.RecordCharacters)
                {
                    sink.RejectLong(block, block.Text[..length], tokeniser.Line);
                    tokeniser.PassLine();
                    linesToPass = 1;
                    done = block.Text[length - 1] == '\r' ? length - 1 : length;
                }

                carried = length - done;
                if (carry.Length < carried)
                {
                    ArrayPool<char>.Shared.Return(carry);
                    carry = ArrayPool<char>.Shared.Rent(carried);
                }

                block.Text[done..length].CopyTo(carry);
                if (done > passed && block.RowCount > 0)
                {
                    var tokenised = done - passed;
                    characters = (int)Math.Clamp((long)tokenised * RowsWanted / block.RowCount, 64 * 1024, MostCharacters);
                    cells = (int)Math.Min((long)block.CellCount * characters / tokenised * 5 / 4, 1 << 24) + 64;
                    rows = (int)((long)block.RowCount * characters / tokenised * 5 / 4) + 64;
                }

                Line = tokeniser.Line;
                if (block.RowCount > 0 || block.RejectedList.Count > 0 || block.SkippedList.Count > 0)
                    yield return block;
                else
                    block.Dispose();
                if (isLast && carried == 0)
                    yield break;
            }
        }
        finally
        {
            ArrayPool<char>.Shared.Return(carry);
        }
    }

    /// <summary>Passes over line breaks until none is left to pass; says how many characters that took.</summary>
    private static int PassLines(ReadOnlySpan<char> text, bool isLast, ref int lines)
    {
        var at = 0;
        while (lines > 0)
        {
            var distance = text[at..].IndexOfAny('\n', '\r');
            if (distance < 0)
                return text.Length;
            var next = Tokeniser.EndOfBreak(text, at + distance, text.Length, isLast);
            if (next < 0)
                return at + distance;
            at = next;
            lines--;
        }

        return at;
    }
}
