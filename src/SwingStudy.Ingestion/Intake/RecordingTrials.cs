using System.Globalization;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Sources;
using SwingStudy.Ingestion.Recordings;

namespace SwingStudy.Ingestion.Intake;

/// <summary>Reads a file of recordings as an intake would, and stores nothing.</summary>
internal static class RecordingTrials
{
    private const int MostRejects = 20;

    /// <summary>Tries a file; a table that the mapping wants beside it is looked for there.</summary>
    /// <param name="path">The file.</param>
    /// <param name="chosen">Its mapping.</param>
    /// <param name="rows">How many recordings to show.</param>
    public static SourceTrial Try(string path, ChosenMapping chosen, int rows)
    {
        var trial = new SourceTrial { File = path, Source = chosen.Mapping.Source };
        var index = Index(path, chosen.Mapping, out var missing);
        if (missing is not null)
            return trial with { Problems = [missing] };
        // The hand of a player is not known here: it changes which side leads, and not what is read.
        var request = new RecordingRequest { Mapping = chosen.Mapping, File = path, Name = path, NameMatch = chosen.NameMatch, Index = index, IsRightHanded = _ => true };
        if (!RecordingReaders.Open(path, request).Succeeded(out var reader, out var problems))
            return trial with { Problems = problems };
        using (reader)
        {
            var shown = new List<IReadOnlyList<string?>>();
            foreach (var recording in reader.Read())
            {
                if (shown.Count < rows)
                    shown.Add(Shown(recording));
            }

            return trial with
            {
                Encoding = reader.Encoding,
                Delimiter = reader.Delimiter,
                Decimal = reader.Decimal,
                Preamble = [.. reader.Preamble.Select(line => line.Text)],
                MappedColumns = ["row", "recorded_at", "participant", "sequence", "purpose", "contact [s]", "events", "curves", "samples a second", "seconds"],
                RowsAsMapped = shown,
                Counts = reader.Counts,
                Rejects = [.. reader.Rejects.Take(MostRejects).Select(reject => new TrialReject(reject.Line, reject.Column, reject.Raw, reject.Reason, reject.Expected))],
                RejectCount = reader.Rejects.Count,
                Problems = reader.Problems,
                Remarks = reader.Remarks,
            };
        }
    }

    private static IndexRow? Index(string path, SourceMapping mapping, out Problem? missing)
    {
        missing = null;
        if (mapping.Index is not { } index)
            return null;
        var beside = Path.Combine(Path.GetDirectoryName(path) ?? "", index.File);
        if (!File.Exists(beside))
        {
            missing = RecordingMessages.IndexMissing(path, index.File);
            return null;
        }

        if (!IndexFile.Read(File.OpenRead(beside), beside, mapping, index).Succeeded(out var table, out var problems))
        {
            missing = problems[0];
            return null;
        }

        var row = table.RowOf(path);
        missing = row is null ? RecordingMessages.IndexRowMissing(path, index.File) : null;
        return row;
    }

    private static List<string?> Shown(Recording recording)
    {
        var rates = recording.Curves.Select(curve => curve.RateHz).Where(double.IsFinite).Distinct().ToList();
        var sampled = recording.Curves.Where(curve => double.IsFinite(curve.RateHz)).ToList();
        return
        [
            recording.Row.ToString(CultureInfo.InvariantCulture),
            DateTimeOffset.FromUnixTimeMilliseconds(recording.StartMillis).UtcDateTime.ToString("yyyy-MM-ddTHH:mm:ss.fffZ", CultureInfo.InvariantCulture),
            recording.Alias,
            recording.Sequence?.ToString(CultureInfo.InvariantCulture),
            Word.Of(recording.Purpose),
            recording.ContactSeconds?.ToString("R", CultureInfo.InvariantCulture),
            string.Join(", ", recording.Events.Select(found => string.Create(CultureInfo.InvariantCulture, $"{found.Event} {found.TimeSeconds:0.###}"))),
            recording.Curves.Count.ToString(CultureInfo.InvariantCulture),
            string.Join(", ", rates.Select(rate => rate.ToString("R", CultureInfo.InvariantCulture))),
            sampled.Count == 0 ? null : sampled.Max(curve => curve.Values.Length / curve.RateHz).ToString("0.###", CultureInfo.InvariantCulture),
        ];
    }
}
