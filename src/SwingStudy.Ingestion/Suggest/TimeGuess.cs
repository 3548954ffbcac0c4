using System.Text.RegularExpressions;
using SwingStudy.Domain.Sources;
using SwingStudy.Ingestion.Mapping;
using SwingStudy.Ingestion.Mapping.Times;
using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Suggest;

/// <summary>Finds where the time of a row stands and the one pattern that all rows fit.</summary>
internal static partial class TimeGuess
{
    private const double LikeDate = 0.8;

    /// <summary>Sets time and files of the draft.</summary>
    public static void Find(RecordDocument document, IReadOnlyDictionary<ColumnRole, ColumnProfile> roles, string? zone, Draft draft)
    {
        List<FieldSource> parts = [];
        if (roles.TryGetValue(ColumnRole.Moment, out var moment))
        {
            parts.Add(Part(moment));
        }
        else
        {
            if (roles.TryGetValue(ColumnRole.Date, out var date))
                parts.Add(Part(date));
            else if (AbovePart(document, draft) is { } above)
                parts.Add(above);
            else if (DateInName().Match(Path.GetFileName(document.File)) is { Success: true } match)
                parts.Add(FromName(document.File, match, draft));
            if (roles.TryGetValue(ColumnRole.TimeOfDay, out var clock))
                parts.Add(Part(clock));
        }

        var isLocal = true;
        var format = parts.Count == 0 ? null : Format(document, parts, draft, out isLocal);
        if (parts.Count == 0)
            draft.Say("time.parts", "", 0, "no column looks like a date or a time: name the place by hand");
        draft.Mapping = draft.Mapping with { Time = new TimeRule { Parts = parts, Format = format, Zone = isLocal ? zone : null } };
        if (isLocal)
            draft.Say("time.zone", zone ?? "", zone is null ? 0 : 0.7, zone is null ? "times are local and the file does not say where: declare the IANA zone" : "the zone of the study; check that the device was set to it");
    }

    private static FieldSource Part(ColumnProfile column) => new() { Column = column.Heading.Name };

    private static FieldSource FromName(string file, Match match, Draft draft)
    {
        var extension = Path.GetExtension(file).TrimStart('.');
        var sign = match.Groups["sign"].Value;
        var date = $@"(?<date>20\d\d{Regex.Escape(sign)}\d\d{Regex.Escape(sign)}\d\d)";
        draft.Mapping = draft.Mapping with { Files = $@".*?{date}.*\.{extension}" };
        draft.Say("files", draft.Mapping.Files, 0.7, $"the file name holds the date {match.Value}, and no column does");
        draft.Say("time.parts", "date of the file name", 0.7, "no column holds a date");
        return new FieldSource { FileGroup = "date" };
    }

    /// <summary>The day where a line above the headings names it, as <c>Date: 17.09.2026</c>.</summary>
    private static FieldSource? AbovePart(RecordDocument document, Draft draft)
    {
        foreach (var line in document.Preamble)
        {
            if (DateAbove().Match(line.Text) is not { Success: true } match || RoleWords.Likeness(HeadingWords.Of(match.Groups["key"].Value), ColumnRole.Date) < LikeDate)
                continue;
            var pattern = $@"^\W*{Regex.Escape(match.Groups["key"].Value)}\W+(?<value>[0-9]+[./-][0-9]+[./-][0-9]+)";
            draft.Say("time.parts", pattern, 0.8, $"line {line.Line} above the headings names the day, and no column does");
            return new FieldSource { Preamble = pattern };
        }

        return null;
    }

    private static string? Format(RecordDocument document, List<FieldSource> parts, Draft draft, out bool isLocal)
    {
        isLocal = true;
        var above = new FixedTexts(document.Preamble, null);
        var detector = new TimeFormatDetector();
        var fromName = DateInName().Match(Path.GetFileName(document.File)).Value;
        var columns = parts.Select(part => part.Column is null ? null : document.Columns.Find(part.Column)).ToList();
        var (typed, sample) = (false, "");
        foreach (var block in document.Blocks())
        {
            using (block)
            {
                for (var row = 0; row < block.RowCount; row++)
                {
                    var texts = columns.Select(column => column is null ? fromName : block.Cell(row, column.Position).Trim().ToString()).ToList();
                    for (var i = 0; i < texts.Count; i++)
                        texts[i] = parts[i].Preamble is null ? texts[i] : above.Of(parts[i]) ?? "";
                    if (columns.Exists(column => column is not null && block.Kind(row, column.Position) == CellKind.Date))
                        typed = true;
                    else if (texts.TrueForAll(text => text.Length > 0 && !RoleWords.IsMissing(text)) && !RoleWords.IsFooter(block.Cell(row, 0).Trim().ToString()))
                        detector.Observe(sample = string.Join(' ', texts));
                }
            }
        }

        if (typed)
        {
            draft.Say("time.format", "excel-serial", 0.95, "workbook cells with a date style");
            return "excel-serial";
        }

        var formats = detector.Fitting;
        if (formats.Count == 1)
        {
            isLocal = formats[0].NeedsZone || (formats[0].MayCarryOffset && formats[0].TryRead(sample, out _, out var isUtc) && !isUtc);
            draft.Say("time.format", formats[0].Text, 0.95, "the only pattern that all rows fit");
            return formats[0].Text;
        }

        draft.Say(
            "time.format",
            "",
            0.1,
            formats.Count == 0 ? $"no pattern fits all rows, such as '{detector.FirstMisfit}'" : $"all rows fit {string.Join(" and ", formats.Select(format => format.Text))}: choose one");
        return null;
    }

    [GeneratedRegex(@"^\W*(?<key>[\p{L} ]{2,30}?)\W+[0-9]+[./-][0-9]+[./-][0-9]+", RegexOptions.CultureInvariant)]
    private static partial Regex DateAbove();

    [GeneratedRegex(@"(?<!\d)20\d\d(?<sign>[-_.]?)\d\d\k<sign>\d\d(?!\d)", RegexOptions.CultureInvariant)]
    private static partial Regex DateInName();
}
