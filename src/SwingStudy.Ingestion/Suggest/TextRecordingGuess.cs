using SwingStudy.Domain.Sources;
using SwingStudy.Ingestion.Readers;
using SwingStudy.Ingestion.Readers.Delimited;

namespace SwingStudy.Ingestion.Suggest;

/// <summary>Drafts a mapping for text with samples of plates or markers.</summary>
internal static class TextRecordingGuess
{
    private const int FewestChannels = 3;
    private const int SearchedRecords = 80;
    private static readonly string[] ClockWords = ["t", "time", "times", "zeit", "ms", "s", "sec", "seconds", "timestamp", "temps", "tiempo"];

    /// <summary>Fills the draft; false for a file whose headings are no channels.</summary>
    public static bool TryFill(FileStream stream, string path, string? zone, Draft draft)
    {
        if (!EncodingFinder.Find(stream, null, path).Succeeded(out var encoding) || Headings(stream, path, encoding) is not { } head)
            return false;
        draft.Say("rows", "recordings", Math.Min(0.97, 0.5 + (0.05 * head.Count)), $"{head.Count} headings name forces, moments or coordinates");
        draft.Say("reader", "delimited", 0.98, "text that is no JSON");
        draft.Say("layout.headings", head.Rows.ToString(System.Globalization.CultureInfo.InvariantCulture), 0.9, $"line {head.Line}");
        draft.Mapping = draft.Mapping with
        {
            Rows = RowMeaning.Recordings,
            Reader = ReaderKind.Delimited,
            Layout = new Layout { HeadingRows = head.Rows, PreambleRows = head.Line - 1 },
            Text = new TextFormat { Delimiter = head.Delimiter },
        };
        if (!RecordReaders.Open(path, draft.Mapping).Succeeded(out var bare))
            return false;
        var values = bare.Columns.Headings.Where(heading => heading.Text.Length > 0).ToDictionary(heading => heading.Name, heading => new FieldSource { Column = heading.Name });
        bare.Dispose();
        if (!RecordReaders.Open(path, draft.Mapping with { Values = values }).Succeeded(out var document))
            return false;
        using (document)
        {
            draft.Say("text.encoding", document.Encoding!, 0.95, document.EncodingBasis!);
            Fill(document, zone, draft);
        }

        return true;
    }

    private static void Fill(RecordDocument document, string? zone, Draft draft)
    {
        var columns = FileProfile.Of(document).Columns;
        var tokens = columns.SelectMany(column => column.Texts.Keys).Where(RoleWords.IsMissing).Distinct(StringComparer.OrdinalIgnoreCase).ToList();
        var clock = columns.FirstOrDefault(column => column.IsNumeric && column.Words is [var word] && ClockWords.Contains(word));
        var rule = new RecordingRule { Clock = clock is null ? null : new FieldSource { Column = clock.Heading.Name, Unit = clock.Heading.Unit is null ? "s" : null } };
        if (clock is not null)
            draft.Say("recording.clock", clock.Heading.Name, clock.Heading.Unit is null ? 0.4 : 0.9, clock.Heading.Unit is null ? "named like a time; seconds are a guess" : "named like a time, with a unit");
        var loads = columns.Select(column => (Column: column, Load: ChannelWords.Load(column.Heading.Text))).Where(pair => pair.Load is not null).Select(pair => (pair.Column, Load: pair.Load!.Value)).ToList();
        rule = loads.Count >= FewestChannels ? PlateGuess.Fill(loads, rule, draft) : LandmarkGuess.OfColumns(columns, rule, draft);
        rule = PreambleGuess.Fill(document.Preamble, rule, zone, draft);
        draft.Mapping = draft.Mapping with
        {
            Missing = tokens,
            Recording = rule,
            Ignore = [.. columns.Select(column => column.Heading.Name).Where(name => rule.Clock?.Column != name && rule.Channels.Values.All(field => field.Column != name) && !LandmarkGuess.Uses(rule, name))],
        };
        foreach (var name in draft.Mapping.Ignore)
            draft.Say($"ignore.{name}", name, 0.5, "no channel is known for it");
    }

    /// <summary>The row or pair of rows with the most headings of channels.</summary>
    private static Head? Headings(FileStream stream, string path, FoundEncoding encoding)
    {
        Head? best = null;
        foreach (var delimiter in DelimiterFinder.Rank(stream, encoding).Select(candidate => candidate.Delimiter))
        {
            List<HeadRecord> records = [.. DelimitedHead.Read(stream, encoding, delimiter, path)];
            for (var i = 0; i < Math.Min(records.Count, SearchedRecords); i++)
            {
                Offer(records[i].Cells.Count(cell => ChannelWords.Load(cell) is not null || LandmarkGuess.IsCoordinate(cell)), 1, i);
                if (i + 1 < records.Count && records[i].Cells.Any(cell => cell.Length == 0))
                    Offer(HeadingFinder.Joined(records[i].Cells, records[i + 1].Cells).Count(LandmarkGuess.IsCoordinate), 2, i);
            }

            void Offer(int count, int rows, int at)
            {
                if (count >= FewestChannels && count > (best?.Count ?? 0))
                    best = new Head(delimiter, records[at].Line, rows, count);
            }
        }

        return best;
    }

    private sealed record Head(char Delimiter, int Line, int Rows, int Count);
}
