using System.Text.Json;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Sources;
using SwingStudy.Ingestion.Readers;
using SwingStudy.Ingestion.Readers.Delimited;
using SwingStudy.Ingestion.Readers.Workbook;

namespace SwingStudy.Ingestion.Suggest;

/// <summary>Opens a file of which nothing is known: finds reader, text format and layout, and says how sure they are.</summary>
internal static class FileProbe
{
    private static readonly string[] OtherEncodings = ["shift_jis", "euc-kr", "gb18030", "windows-1251", "windows-1250"];

    /// <summary>The document, with reader, text and layout set in the draft; or why the file cannot be read.</summary>
    public static Outcome<RecordDocument> Open(string path, Draft draft, IReadOnlyList<VariableNames> variables)
    {
        if (!RecordReaders.OpenUnpacked(path).Succeeded(out var stream, out var problems))
            return Outcome<RecordDocument>.Failed(problems);
        using (stream)
        {
            if (Find(stream, path, draft, variables) is { } problem)
                return problem;
        }

        if (!RecordReaders.Open(path, draft.Mapping).Succeeded(out var bare, out problems))
            return Outcome<RecordDocument>.Failed(problems);
        var columns = bare.Columns.Headings;
        bare.Dispose();

        // Once more with all columns as values, so that their numbers decide the decimal sign.
        var values = columns.Where(column => column.Text.Length > 0).ToDictionary(column => column.Name, column => new FieldSource { Column = column.Name });
        var outcome = RecordReaders.Open(path, draft.Mapping with { Values = values });
        if (outcome.Succeeded(out var document))
        {
            if (document.Encoding is not null && draft.Mapping.Text.Encoding is null)
                draft.Say("text.encoding", document.Encoding, document.EncodingBasis!.StartsWith("fallback", StringComparison.Ordinal) ? 0.8 : 0.98, document.EncodingBasis);
            if (draft.Mapping.Reader == ReaderKind.Delimited)
                draft.Say("text.decimal", document.Decimal.ToString(), 0.95, "no number of the file speaks against it");
            return document;
        }

        var question = outcome.Problems[0];
        if (!question.Code.StartsWith("decimal-", StringComparison.Ordinal))
            return Outcome<RecordDocument>.Failed(outcome.Problems);
        draft.Mapping = draft.Mapping with { Text = draft.Mapping.Text with { Decimal = '.' } };
        draft.Say("text.decimal", ".", 0.2, $"a guess: the file holds {question.Found}");
        return RecordReaders.Open(path, draft.Mapping);
    }

    private static Problem? Find(Stream stream, string path, Draft draft, IReadOnlyList<VariableNames> variables)
    {
        if (stream.Length == 0)
            return ReaderMessages.Empty(path);
        var start = new byte[4];
        stream.ReadAtLeast(start, start.Length, throwOnEndOfStream: false);
        if (start.AsSpan().StartsWith("PK"u8) || start is [0xD0, 0xCF, ..])
            return FindSheet(stream, path, draft, variables);
        if (ReaderMessages.OtherFormat(start, path) is { } other)
            return other;
        if (!FindEncoding(stream, path, draft, out var declared).Succeeded(out var encoding, out var problems))
            return problems[0];
        draft.Mapping = draft.Mapping with { Text = draft.Mapping.Text with { Encoding = declared } };
        var lines = DelimitedHead.Read(stream, encoding, null, path).Select(record => record.Raw.Trim()).Where(line => line.Length > 0).Take(2).ToList();
        if (lines.Count > 0 && (lines[0][0] == '{' || (lines[0][0] == '[' && lines[0].TrimStart('[', ' ') is [] or ['{', ..])))
            return FindRecords(stream, path, draft, lines);
        return FindText(stream, path, draft, encoding, variables);
    }

    /// <summary>The encoding of the text; where nothing tells it, the first of those that other scripts use in which every byte has a meaning, as a guess.</summary>
    private static Outcome<FoundEncoding> FindEncoding(Stream stream, string path, Draft draft, out string? declared)
    {
        declared = null;
        var found = EncodingFinder.Find(stream, null, path);
        if (found.Succeeded(out _) || found.Problems[0].Code != "encoding-misfit")
            return found;
        foreach (var name in OtherEncodings)
        {
            if (!EncodingFinder.Find(stream, name, path).Succeeded(out var guess))
                continue;
            declared = name;
            draft.Say("text.encoding", name, 0.3, "a guess: the first encoding in which every byte has a meaning; look at the names");
            return guess;
        }

        return found;
    }

    private static Problem? FindText(Stream stream, string path, Draft draft, FoundEncoding encoding, IReadOnlyList<VariableNames> variables)
    {
        TextGuess? best = null;
        foreach (var (sign, share) in DelimiterFinder.Rank(stream, encoding).Select(candidate => ((char?)candidate.Delimiter, candidate.Share)).Append((null, 0)))
        {
            var guess = LayoutGuess.Of([.. DelimitedHead.Read(stream, encoding, sign, path)], variables);
            if (guess is not null && (best is null || Math.Round(guess.Score, 1) > Math.Round(best.Layout.Score, 1)))
                best = new(sign, share, guess);
        }

        if (best?.Layout is not { } layout)
            return ReaderMessages.Empty(path);
        if (best.Delimiter is null && DelimitedHead.Read(stream, encoding, null, path).Where(record => record.Raw.Trim().Length > 0).Take(10).ToList() is { Count: > 2 } heads
            && heads.TrueForAll(record => record.Raw.Trim().Contains("  ", StringComparison.Ordinal)))
            return ReaderMessages.FixedWidth(path, layout.Line);
        draft.Say("reader", "delimited", 0.98, "text that is no JSON");
        if (best.Delimiter is { } delimiter)
            draft.Say("text.delimiter", delimiter == '\t' ? "\\t" : delimiter.ToString(), Math.Min(0.98, 0.5 + (best.Share / 2)), $"equally often in {best.Share:P0} of the records");
        Set(draft, ReaderKind.Delimited, new Layout { PreambleRows = layout.Line - 1, HeadingRows = layout.HeadingRows }, layout);
        draft.Mapping = draft.Mapping with { Text = draft.Mapping.Text with { Delimiter = best.Delimiter } };
        return null;
    }

    private static Problem? FindSheet(Stream stream, string path, Draft draft, IReadOnlyList<VariableNames> variables)
    {
        if (!WorkbookReader.Parse(stream, path).Succeeded(out var workbook, out var problems))
            return problems[0];
        var best = workbook.Heads
            .Select(head => (Head: head, Guess: LayoutGuess.Of(head.Records, variables)))
            .Where(pair => pair.Guess is not null)
            .OrderByDescending(pair => pair.Guess!.Score)
            .FirstOrDefault();
        if (best.Guess is not { } layout)
            return ReaderMessages.Empty(path);
        draft.Say("reader", "workbook", 1, "the file is a workbook");
        if (workbook.Heads.Count > 1)
            draft.Say("layout.sheet", best.Head.Name, 0.8, $"its headings fit best of {workbook.Heads.Count} sheets");
        Set(draft, ReaderKind.Workbook, new Layout { PreambleRows = layout.Line - 1, HeadingRows = layout.HeadingRows, Sheet = best.Head.Name }, layout);
        return null;
    }

    private static void Set(Draft draft, ReaderKind reader, Layout layout, LayoutGuess guess)
    {
        draft.Mapping = draft.Mapping with { Reader = reader, Layout = layout };
        var confidence = Math.Round(Math.Min(0.97, 0.4 + (0.6 * guess.Score / Math.Max(1, guess.Cells))), 2);
        draft.Say("layout.headings", layout.HeadingRows.ToString(System.Globalization.CultureInfo.InvariantCulture), confidence, $"line {guess.Line}: {guess.Cells} headings, of which the dictionary explains about {guess.Score:F0}");
    }

    private static Problem? FindRecords(Stream stream, string path, Draft draft, List<string> lines)
    {
        if (lines[0][0] == '{' && (path.EndsWith("jsonl", StringComparison.OrdinalIgnoreCase) || path.EndsWith("ndjson", StringComparison.OrdinalIgnoreCase) || IsRecord(lines[0])))
        {
            draft.Mapping = draft.Mapping with { Reader = ReaderKind.Ndjson };
            draft.Say("reader", "ndjson", 0.95, "one object a line");
            return null;
        }

        if (stream.Length > ReaderLimits.JsonBytes)
            return ReaderMessages.JsonTooLarge(path, stream.Length);
        stream.Position = 0;
        try
        {
            using var document = JsonDocument.Parse(stream, new JsonDocumentOptions { MaxDepth = ReaderLimits.JsonDepth });
            var (records, count) = Largest(document.RootElement, null, (null, -1));
            if (count < 0 && HoldsColumns(document.RootElement))
                return ReaderMessages.JsonColumnsOfValues(path);
            if (count < 0)
                return ReaderMessages.RecordsMissing(path, null);
            draft.Mapping = draft.Mapping with { Reader = ReaderKind.Json, Layout = new Layout { Records = records } };
            draft.Say("reader", "json", 1, "the file is one JSON document");
            if (records is not null)
                draft.Say("layout.records", records, 0.9, $"the longest array of objects: {count}");
            return null;
        }
        catch (JsonException e)
        {
            return ReaderMessages.JsonMalformed(path, (int)((e.LineNumber ?? 0) + 1), e.Message);
        }
    }

    /// <summary>Whether a line is a whole object that holds no arrays, so that it is a record and no document around records.</summary>
    private static bool IsRecord(string line)
    {
        try
        {
            using var document = JsonDocument.Parse(line);
            return document.RootElement.ValueKind == JsonValueKind.Object && Largest(document.RootElement, null, (null, -1)).Count < 0 && !HoldsColumns(document.RootElement);
        }
        catch (JsonException)
        {
            return false;
        }
    }

    /// <summary>Whether an object holds arrays of values side by side: columns in place of records.</summary>
    private static bool HoldsColumns(JsonElement element) => element.ValueKind == JsonValueKind.Object
        && element.EnumerateObject().Where(property => property.Value.ValueKind == JsonValueKind.Array && property.Value.GetArrayLength() > 1).GroupBy(property => property.Value.GetArrayLength()).Any(group => group.Count() > 1);

    /// <summary>The path to the most objects, through arrays too, and how many there are.</summary>
    private static (string? Path, int Count) Largest(JsonElement element, string? path, (string? Path, int Count) best)
    {
        var counts = new Dictionary<string, int>(StringComparer.Ordinal);
        Count(element, path ?? "", counts);
        return counts.Count == 0 ? best : counts.MaxBy(pair => pair.Value) is var (found, count) ? (found.Length == 0 ? null : found, count) : best;
    }

    private static void Count(JsonElement element, string path, Dictionary<string, int> counts)
    {
        if (element.ValueKind == JsonValueKind.Array)
        {
            if (!element.EnumerateArray().All(item => item.ValueKind == JsonValueKind.Object))
                return;
            counts[path] = counts.GetValueOrDefault(path) + element.GetArrayLength();
            foreach (var item in element.EnumerateArray())
                Count(item, path, counts);
        }
        else if (element.ValueKind == JsonValueKind.Object)
        {
            foreach (var property in element.EnumerateObject().Where(property => property.Value.ValueKind is JsonValueKind.Array or JsonValueKind.Object))
                Count(property.Value, path.Length == 0 ? property.Name : $"{path}.{property.Name}", counts);
        }
    }

    private sealed record TextGuess(char? Delimiter, double Share, LayoutGuess Layout);
}
