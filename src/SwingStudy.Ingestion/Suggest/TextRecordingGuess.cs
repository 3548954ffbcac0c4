using SwingStudy.Domain.Problems;
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

    private static readonly string[] FrameWords = ["frame", "frames", "sample", "samples", "index", "bild", "image", "muestra", "échantillon", "echantillon", "no"];

    /// <summary>Fills the draft; false for a file whose headings are no channels.</summary>
    public static bool TryFill(Stream stream, string path, string? zone, Draft draft)
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
        if (!OpenWith(path, values, draft).Succeeded(out var document))
            return false;
        using (document)
        {
            draft.Say("text.encoding", document.Encoding!, 0.95, document.EncodingBasis!);
            Fill(document, zone, draft);
        }

        return true;
    }

    /// <summary>Opens the file with all columns as numbers; where they leave the decimal sign open, the sign that occurs in them is the guess.</summary>
    private static Outcome<RecordDocument> OpenWith(string path, Dictionary<string, FieldSource> values, Draft draft)
    {
        var outcome = RecordReaders.Open(path, draft.Mapping with { Values = values });
        if (outcome.Succeeded(out _) || !outcome.Problems[0].Code.StartsWith("decimal-", StringComparison.Ordinal))
            return outcome;
        var sign = outcome.Problems[0].Found.Contains(',', StringComparison.Ordinal) ? ',' : '.';
        draft.Mapping = draft.Mapping with { Text = draft.Mapping.Text with { Decimal = sign } };
        draft.Say("text.decimal", sign.ToString(), 0.4, $"a guess: the file holds {outcome.Problems[0].Found}");
        return RecordReaders.Open(path, draft.Mapping with { Values = values });
    }

    private static void Fill(RecordDocument document, string? zone, Draft draft)
    {
        var columns = FileProfile.Of(document).Columns;
        var tokens = columns.SelectMany(column => column.Texts.Keys).Where(RoleWords.IsMissing).Distinct(StringComparer.OrdinalIgnoreCase).ToList();
        var rule = ClockOf(columns, draft);
        var loads = columns.Select(column => (Column: column, Load: ChannelWords.Load(column.Heading.Text))).Where(pair => pair.Load is not null).Select(pair => (pair.Column, Load: pair.Load!.Value)).ToList();
        rule = loads.Count >= FewestChannels ? PlateGuess.Fill(loads, rule, draft) : LandmarkGuess.OfColumns(columns, rule, draft);
        rule = TrialGuess.Fill(columns, rule, zone, draft);
        rule = PreambleGuess.Fill(document.Preamble, rule, zone, draft);
        if (draft.Mapping.Time.Parts.Count == 0 && draft.Lines.RemoveAll(line => line.Key == "time.parts") > 0)
            PreambleGuess.FromName(document.File, zone, draft);
        rule = Frames(columns, rule, draft);
        var sideBySide = TrialGuess.SideBySide(loads);
        if (sideBySide.Count > 0)
            rule = Wide(document, rule, draft);
        string?[] used = [rule.Clock?.Column, rule.Trial?.Column, draft.Mapping.Participant?.Column, draft.Mapping.Sequence?.Column, .. draft.Mapping.Time.Parts.Select(part => part.Column), .. sideBySide];
        draft.Mapping = draft.Mapping with
        {
            Missing = tokens,
            Recording = rule,
            Ignore = [.. columns.Select(column => column.Heading.Name).Where(name => !used.Contains(name) && rule.Channels.Values.All(field => field.Column != name) && !LandmarkGuess.Uses(rule, name))],
        };
        foreach (var name in draft.Mapping.Ignore)
            draft.Say($"ignore.{name}", name, 0.5, "no channel is known for it");
    }

    /// <summary>The column that tells the time of samples.</summary>
    private static RecordingRule ClockOf(IReadOnlyList<ColumnProfile> columns, Draft draft)
    {
        if (columns.FirstOrDefault(column => column.IsNumeric && column.Words is [var word] && ClockWords.Contains(word)) is { } clock)
        {
            var unit = clock.TrailingUnit ?? (clock.Heading.Unit is null ? "s" : null);
            var isTold = clock.Heading.Unit is not null || clock.TrailingUnit is not null;
            draft.Say("recording.clock", clock.Heading.Name, isTold ? 0.9 : 0.4, isTold ? "named like a time, with a unit" : "named like a time; seconds are a guess");
            return new RecordingRule { Clock = new FieldSource { Column = clock.Heading.Name, Unit = unit } };
        }

        if (columns.FirstOrDefault(column => column.IsClock) is not { } wall)
            return new RecordingRule();
        draft.Say("recording.clock", wall.Heading.Name, 0.9, "cells are times of day");
        return new RecordingRule { Clock = new FieldSource { Column = wall.Heading.Name }, ClockKind = ClockKind.TimeOfDay };
    }

    /// <summary>A count of samples tells lost lines where the rate is known and no time is.</summary>
    private static RecordingRule Frames(IReadOnlyList<ColumnProfile> columns, RecordingRule rule, Draft draft)
    {
        if (rule.Clock is not null || rule.Rate is null || columns.FirstOrDefault(column => column.Counts && column.Words is [var word] && FrameWords.Contains(word)) is not { } frames)
            return rule;
        draft.Say("recording.clock", frames.Heading.Name, 0.8, "counts samples");
        return rule with { Clock = new FieldSource { Column = frames.Heading.Name }, ClockKind = ClockKind.Frames };
    }

    /// <summary>Recordings side by side: the row above the headings numbers them.</summary>
    private static RecordingRule Wide(RecordDocument document, RecordingRule rule, Draft draft)
    {
        var above = Math.Max(0, (draft.Mapping.Layout.PreambleRows ?? 1) - 1);
        draft.Mapping = draft.Mapping with { Layout = draft.Mapping.Layout with { HeadingRows = 2, PreambleRows = above }, Text = draft.Mapping.Text with { Decimal = document.Decimal } };
        draft.Say("recording.form", "wide", 0.7, "the same headings occur again side by side");
        draft.Say("layout.preamble", above.ToString(System.Globalization.CultureInfo.InvariantCulture), 0.6, "the row above the headings numbers the recordings");
        return rule with { Form = RecordingForm.Wide };
    }

    /// <summary>The row or pair of rows with the most headings of channels.</summary>
    private static Head? Headings(Stream stream, string path, FoundEncoding encoding)
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
