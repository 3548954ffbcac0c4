using System.Globalization;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Sources;
using SwingStudy.Domain.Variables;
using SwingStudy.Ingestion.Mapping;
using SwingStudy.Ingestion.Mapping.Cells;
using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Intake;

/// <summary>Reads a file as an intake would, and stores nothing.</summary>
public static class SourceTrials
{
    private const int MostRejects = 20;

    /// <summary>Tries a file.</summary>
    /// <param name="path">The file.</param>
    /// <param name="mappings">Mappings of the study; the one that fits is found as at intake. Give one to try that one.</param>
    /// <param name="dictionary">The variables.</param>
    /// <param name="rows">How many of the first rows to show.</param>
    public static SourceTrial TrySource(string path, IReadOnlyList<SourceMapping> mappings, VariableDictionary dictionary, int rows = 10)
    {
        if (Directory.Exists(path))
            return Failed(path, null, [IntakeMessages.IsFolder(path)]);
        if (!File.Exists(path))
            return Failed(path, null, [IntakeMessages.FileMissing(path)]);
        var candidate = new Candidate(path, Path.GetFullPath(path), CandidatePlace.Named, new FileInfo(path).Length);
        if (candidate.Size == 0)
            return Failed(path, null, [IntakeMessages.FileEmpty(path)]);
        if (!Choose(candidate, mappings, dictionary).Succeeded(out var chosen, out var problems))
            return Failed(path, mappings.Count == 1 ? mappings[0].Source : null, problems);
        if (chosen.Mapping.Rows == RowMeaning.Recordings)
            return RecordingTrials.Try(path, chosen, rows);
        if (!RecordReaders.Open(path, chosen.Mapping).Succeeded(out var document, out problems))
            return Failed(path, mappings.Count == 1 ? mappings[0].Source : null, problems);
        using (document)
            return Try(path, chosen, document, dictionary, rows);
    }

    private static SourceTrial Failed(string path, string? source, IReadOnlyList<Problem> problems) => new() { File = path, Source = source, Problems = problems };

    /// <summary>A single mapping is tried whatever the file is called.</summary>
    private static Outcome<ChosenMapping> Choose(Candidate candidate, IReadOnlyList<SourceMapping> mappings, VariableDictionary dictionary)
    {
        var chosen = new MappingChoice(mappings, dictionary).For(candidate, candidate.Path);
        return chosen.Problems.Count > 0 && mappings.Count == 1 ? new ChosenMapping(mappings[0], null) : chosen;
    }

    private static SourceTrial Try(string path, ChosenMapping chosen, RecordDocument document, VariableDictionary dictionary, int rows)
    {
        var trial = new SourceTrial
        {
            File = path,
            Source = chosen.Mapping.Source,
            Encoding = document.EncodingBasis is { } basis ? $"{document.Encoding} ({basis})" : document.Encoding,
            Delimiter = document.Delimiter,
            Decimal = document.Decimal,
            Preamble = [.. document.Preamble.Select(line => line.Text)],
            Headings = [.. document.Columns.Headings.Select(heading => heading.Name)],
            RowsAsRead = FirstRows(document, rows),
        };
        var mapped = new FileMapper(chosen.Mapping, dictionary, Environment.ProcessorCount).Map(document, chosen.NameMatch, null);
        if (!mapped.Succeeded(out var file, out var problems))
            return trial with { Problems = problems, Remarks = document.Notices };
        return trial with
        {
            MappedColumns =
            [
                "line", "recorded_at", "participant", "sequence", "is_practice",
                .. file.Plan.Numbers.Select(column => column.Variable.Unit is null or "1" ? column.Variable.Name : $"{column.Variable.Name} [{column.Variable.Unit}]"),
                .. file.Plan.Texts.Select(column => column.Variable.Name),
            ],
            RowsAsMapped = [.. Enumerable.Range(0, Math.Min(rows, file.Count)).Select(row => Shown(file, row))],
            Counts = file.Counts,
            Rejects = [.. file.Rejects.Take(MostRejects).Select(reject => new TrialReject(reject.Line, reject.Column, reject.Raw, reject.Reason, reject.Expected))],
            RejectCount = file.Rejects.Count,
            Remarks = file.Remarks,
        };
    }

    private static List<IReadOnlyList<string>> FirstRows(RecordDocument document, int rows)
    {
        var first = new List<IReadOnlyList<string>>();
        foreach (var block in document.Blocks())
        {
            using (block)
            {
                for (var row = 0; row < block.RowCount && first.Count < rows; row++)
                    first.Add([.. Enumerable.Range(0, block.ColumnCount).Select(column => CellText.Trim(block.Cell(row, column)).ToString())]);
            }

            if (first.Count >= rows)
                break;
        }

        return first;
    }

    private static List<string?> Shown(MappedFile file, int row)
    {
        List<string?> cells =
        [
            file.Lines[row].ToString(CultureInfo.InvariantCulture),
            DateTimeOffset.FromUnixTimeMilliseconds(file.RecordedAt[row]).UtcDateTime.ToString("yyyy-MM-ddTHH:mm:ss.fffZ", CultureInfo.InvariantCulture),
            file.Aliases[file.AliasOf[row]],
            file.Sequence(row) == long.MinValue ? null : file.Sequence(row).ToString(CultureInfo.InvariantCulture),
            file.IsPractice(row) ? "true" : "false",
        ];
        for (var i = 0; i < file.Plan.Numbers.Count; i++)
            cells.Add(file.Number(i, row) is var value && double.IsNaN(value) ? null : value.ToString("R", CultureInfo.InvariantCulture));
        for (var i = 0; i < file.Plan.Texts.Count; i++)
            cells.Add(file.Text(i, row));
        return cells;
    }
}
