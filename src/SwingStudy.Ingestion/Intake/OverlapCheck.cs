using System.Globalization;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Tables;
using SwingStudy.Ingestion.Mapping;

namespace SwingStudy.Ingestion.Intake;

/// <summary>Compares the rows of a file with earlier captures of the same player and source: new, repeated, corrected, or in contradiction.</summary>
/// <param name="file">The mapped file.</param>
/// <param name="name">Its name, for messages.</param>
/// <param name="earlier">What the study has.</param>
/// <param name="takeAnyway">A person decided that this file's values replace those that differ.</param>
internal sealed class OverlapCheck(MappedFile file, string name, EarlierCaptures earlier, bool takeAnyway)
{
    private const int MostProblems = 20;
    private readonly bool _hasNumbers = file.Plan.Sequence is not null;

    /// <summary>Checks the rows of one player.</summary>
    public Overlap Check(ParticipantId participant, IReadOnlyList<int> rows)
    {
        var overlap = new Overlap();
        if (rows.Count == 0)
            return overlap;
        var (from, upTo) = (rows.Min(row => file.RecordedAt[row]), rows.Max(row => file.RecordedAt[row]));
        string[] variables = [.. file.Plan.Numbers.Select(column => column.Variable.Name), .. file.Plan.Texts.Select(column => column.Variable.Name)];
        var known = earlier.Find(participant, file.Plan.Mapping.Source, variables, from, upTo);
        var areRising = AreRising(rows);
        if (known.Count == 0 && areRising)
        {
            // The first export of a player, as a rule: all rows are new and replace none, so that no keys are made for them.
            overlap.New.AddRange(rows);
            return overlap;
        }

        var keys = Keys(rows, areRising, overlap);
        if (known.Count == 0)
        {
            foreach (var (_, row) in keys)
                Store(overlap, row, null);
            return overlap;
        }

        Compare(overlap, keys, known, earlier.RowsByOriginal(participant));
        return overlap;
    }

    private static void Store(Overlap overlap, int row, string? revisionOf)
    {
        overlap.New.Add(row);
        overlap.RevisionOf.Add(revisionOf);
    }

    private void Compare(
        Overlap overlap, List<(CaptureKey Key, int Row)> keys, IReadOnlyDictionary<CaptureKey, EarlierCapture> known, IReadOnlyDictionary<string, long> rowsByOriginal)
    {
        var matched = keys.Where(pair => known.ContainsKey(pair.Key)).GroupBy(pair => known[pair.Key].Original).ToDictionary(group => group.Key, group => (long)group.Count());
        var changed = keys.Where(pair => known.TryGetValue(pair.Key, out var capture) && Differences(pair.Row, capture).Any()).Select(pair => pair.Key).ToHashSet();
        var lacking = new HashSet<string>(StringComparer.Ordinal);
        foreach (var (key, row) in keys)
        {
            if (!known.TryGetValue(key, out var capture))
            {
                Store(overlap, row, null);
            }
            else if (!changed.Contains(key))
            {
                overlap.Repeats.Add(row);
            }
            else if (takeAnyway || 2 * matched[capture.Original] >= rowsByOriginal.GetValueOrDefault(capture.Original))
            {
                overlap.Revisions.AddRange(Differences(row, capture));
                if (lacking.Add(capture.Original))
                    overlap.Lacking += rowsByOriginal.GetValueOrDefault(capture.Original) - matched[capture.Original];
                Store(overlap, row, capture.Id);
            }
            else if (overlap.Problems.Count < MostProblems)
            {
                var first = Differences(row, capture).First();
                overlap.Problems.Add(IntakeMessages.OverlapDiffers(name, file.Lines[row], capture.Id, first.Variable, first.Before, first.After));
            }
        }
    }

    /// <summary>The keys of the rows. The same record twice within the file is a repeat; two records under one key contradict each other.</summary>
    private List<(CaptureKey Key, int Row)> Keys(IReadOnlyList<int> rows, bool areRising, Overlap overlap)
    {
        var keys = new List<(CaptureKey, int)>(rows.Count);
        if (areRising)
        {
            foreach (var row in rows)
                keys.Add((new CaptureKey(file.RecordedAt[row], file.Sequence(row), 0), row));
            return keys;
        }

        var first = new Dictionary<CaptureKey, List<int>>();
        foreach (var row in rows)
        {
            var key = new CaptureKey(file.RecordedAt[row], file.Sequence(row), 0);
            if (!first.TryGetValue(key, out var same))
                first.Add(key, same = []);
            if (same.Exists(other => AreSame(other, row)))
            {
                overlap.Repeats.Add(row);
                continue;
            }

            if (same.Count > 0 && _hasNumbers && !takeAnyway && overlap.Problems.Count < MostProblems)
                overlap.Problems.Add(IntakeMessages.RowsConflict(name, file.Lines[row], file.Lines[same[0]]));
            keys.Add((key with { Ordinal = same.Count }, row));
            same.Add(row);
        }

        return keys;
    }

    private bool AreRising(IReadOnlyList<int> rows)
    {
        for (var i = 1; i < rows.Count; i++)
        {
            if (file.RecordedAt[rows[i]] <= file.RecordedAt[rows[i - 1]])
                return false;
        }

        return true;
    }

    private bool AreSame(int a, int b)
    {
        for (var i = 0; i < file.Plan.Numbers.Count; i++)
        {
            if (!file.Number(i, a).Equals(file.Number(i, b)))
                return false;
        }

        for (var i = 0; i < file.Plan.Texts.Count; i++)
        {
            if (file.Text(i, a) != file.Text(i, b))
                return false;
        }

        return file.IsPractice(a) == file.IsPractice(b);
    }

    private IEnumerable<RowRevision> Differences(int row, EarlierCapture capture)
    {
        for (var i = 0; i < file.Plan.Numbers.Count; i++)
        {
            var variable = file.Plan.Numbers[i].Variable.Name;
            var (before, after) = (NumberOf(capture.Rows[variable], capture.Row), file.Number(i, row));
            if (!before.Equals(after))
                yield return new RowRevision(file.Lines[row], capture.Id, variable, Shown(before), Shown(after));
        }

        for (var i = 0; i < file.Plan.Texts.Count; i++)
        {
            var variable = file.Plan.Texts[i].Variable.Name;
            var (before, after) = (capture.Rows.Texts(variable)[capture.Row], file.Text(i, row));
            if (before != after)
                yield return new RowRevision(file.Lines[row], capture.Id, variable, before, after);
        }

        var was = capture.Rows.Booleans("is_practice")[capture.Row] ?? false;
        if (was != file.IsPractice(row))
            yield return new RowRevision(file.Lines[row], capture.Id, "is_practice", was ? "true" : "false", was ? "false" : "true");
    }

    private static double NumberOf(Column column, int row) => column switch
    {
        NumberColumn numbers => numbers.Values[row],
        IntegerColumn integers => integers.Values[row] ?? double.NaN,
        BooleanColumn booleans => booleans.Values[row] switch { true => 1, false => 0, _ => double.NaN },
        _ => throw new InvalidOperationException($"A {column.Kind} column holds no numbers."),
    };

    private static string? Shown(double value) => double.IsNaN(value) ? null : value.ToString("R", CultureInfo.InvariantCulture);
}
