using System.Buffers;

namespace SwingStudy.Ingestion.Readers.Delimited;

/// <summary>Counts the candidates for the delimiter in each record of a whole file, outside quotes.</summary>
internal static class DelimiterFinder
{
    /// <summary>The candidates, in this order when two are equally consistent: a comma may be a decimal sign, a tab hardly is anything but a delimiter.</summary>
    public const string Candidates = "\t;|,";

    private static readonly SearchValues<char> Signs = SearchValues.Create("\t;|,\"\r\n");

    /// <summary>The candidates that stand equally often in records, the most consistent first, with the share of records that agree.</summary>
    public static IReadOnlyList<(char Delimiter, double Share)> Rank(Stream stream, FoundEncoding encoding)
    {
        var histograms = Candidates.Select(_ => new Dictionary<int, int>()).ToArray();
        var records = Count(stream, encoding, histograms);
        return records == 0
            ? []
            : [.. Candidates
                .Select((sign, i) => (sign, Share: histograms[i].Count == 0 ? 0 : Math.Round((double)histograms[i].Values.Max() / records, 2)))
                .Where(candidate => candidate.Share > 0)
                .OrderByDescending(candidate => candidate.Share)];
    }

    private static int Count(Stream stream, FoundEncoding encoding, Dictionary<int, int>[] histograms)
    {
        using var source = new TextSource(stream, encoding);
        var buffer = new char[256 * 1024];
        Span<int> counts = stackalloc int[Candidates.Length];
        counts.Clear();
        var records = 0;
        var quoted = false;
        var quotedLength = 0L;
        var before = '\n';
        while (source.Read(buffer) is var length and > 0)
        {
            var text = buffer.AsSpan(0, length);
            var at = 0;
            while (at < length)
            {
                var distance = text[at..].IndexOfAny(Signs);
                var p = distance < 0 ? length : at + distance;
                if (p > at)
                    before = text[p - 1];
                quotedLength += quoted ? p - at + 1 : 0;
                at = p + 1;
                if (p == length)
                    break;
                var sign = text[p];
                if (quoted && quotedLength < ReaderLimits.RecordCharacters)
                {
                    quoted = sign != '"';
                    before = sign;
                    continue;
                }

                if (sign == '"')
                {
                    // Also right after a closing quote, where a doubled one goes on with the cell.
                    quoted = before is '\n' or '\r' or '"' || Candidates.Contains(before, StringComparison.Ordinal);
                    quotedLength = 0;
                }
                else if (sign is '\n' or '\r')
                {
                    quoted = false;
                    if (Tally(counts, histograms) || before is not ('\n' or '\r'))
                        records++;
                }
                else
                {
                    counts[Candidates.IndexOf(sign, StringComparison.Ordinal)]++;
                }

                before = sign;
            }
        }

        return Tally(counts, histograms) || before is not ('\n' or '\r') ? records + 1 : records;
    }

    private static bool Tally(Span<int> counts, Dictionary<int, int>[] histograms)
    {
        var any = false;
        for (var i = 0; i < counts.Length; i++)
        {
            if (counts[i] == 0)
                continue;
            any = true;
            System.Runtime.InteropServices.CollectionsMarshal.GetValueRefOrAddDefault(histograms[i], counts[i], out _)++;
            counts[i] = 0;
        }

        return any;
    }
}
