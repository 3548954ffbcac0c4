using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Tables;
using SwingStudy.Ingestion.Redaction;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Pipeline.Erasing;

/// <summary>Takes a person out of the tables: the person's files go, files that hold others as well are written anew without the person's rows, and
/// the history of each table begins anew, since its log and its older files tell of the person too.</summary>
/// <param name="tables">The tables.</param>
/// <param name="person">The person.</param>
/// <param name="things">The person's captures, and originals that were the person's alone.</param>
internal sealed class TableErasure(TableStore tables, PersonTexts person, IReadOnlySet<string> things)
{
    private static readonly CommitInfo Why = new() { Stage = "erase" };
    private readonly string _code = person.Participant.ToString();

    /// <summary>Clears one table.</summary>
    /// <returns>The version from which its history begins; or what stood against a commit.</returns>
    public Outcome<long> Clear(string name)
    {
        var table = tables.Existing(name)!;
        var (adds, removes) = (new List<DataFile>(), new List<string>());
        foreach (var file in table.Files())
        {
            if (file.Partition == _code)
                removes.Add(file.Path);
            else if (Concerns(table, file))
            {
                removes.Add(file.Path);
                if (Rewrite(table, file) is { } left)
                    adds.Add(left);
            }
        }

        var committed = table.Commit(new TableChange { Adds = adds, Removes = removes, Info = Why });
        return committed.Problems.Count > 0 ? committed : table.CollapseHistory(Why);
    }

    /// <summary>Rows of the person in one table.</summary>
    public long Count(string name)
    {
        var table = tables.Existing(name)!;
        return table.Files().Sum(file => file.Partition == _code ? file.Rows
            : Concerns(table, file) ? table.ReadFiles([file]).Sum(rows => (long)Enumerable.Range(0, rows.Count).Count(row => IsOwn(rows, row))) : 0);
    }

    /// <summary>Rows of a table outside the person's own files that are the person's.</summary>
    public long CountRejected(string original)
    {
        if (tables.Existing("rejects") is not { } rejects)
            return 0;
        return rejects.ReadFiles(rejects.Files().Where(file => file.OriginalHashes.Contains(original))).Sum(rows =>
        {
            var (originals, extents) = (rows.Texts("original_sha256"), rows.Texts("extent"));
            return Enumerable.Range(0, rows.Count).Count(row => originals[row] == original && extents[row] == "row" && IsOwn(rows, row));
        });
    }

    private bool Concerns(DeltaTable table, DataFile file)
    {
        string[] texts = [.. table.Definition.Columns.Where(column => column.Kind == ColumnKind.Text).Select(column => column.Name)];
        return table.ReadFiles([file], texts).Any(rows => Enumerable.Range(0, rows.Count).Any(row =>
            texts.Any(column => rows.Texts(column)[row] is { } text && (things.Contains(text) || person.IsNamedIn(text)))));
    }

    private DataFile? Rewrite(DeltaTable table, DataFile file)
    {
        using var writer = table.NewFile(file.Partition, file.Unit, file.Originals);
        foreach (var rows in table.ReadFiles([file]))
        {
            int[] kept = [.. Enumerable.Range(0, rows.Count).Where(row => !IsOwn(rows, row))];
            if (kept.Length > 0)
                writer.Append(WithoutNames(rows.Select(kept)));
        }

        return writer.Rows > 0 ? writer.Complete() : null;
    }

    /// <summary>A row is the person's when a name of a thing (participant, capture, swing, session) is, or when it holds raw text of the person.</summary>
    private bool IsOwn(RowSet rows, int row) => rows.Table.Columns.Where(column => column.Kind == ColumnKind.Text).Any(column =>
        rows.Texts(column.Name)[row] is { } text
        && (text == _code || text.StartsWith(_code + "-", StringComparison.Ordinal) || things.Contains(text) || (column.Name is "raw" or "statement" or "reasons" && person.IsNamedIn(text))));

    private RowSet WithoutNames(RowSet rows) => new(rows.Table, [.. rows.Columns.Select(column => column is TextColumn texts
        ? new TextColumn([.. texts.Values.Select(text => text is null ? null : person.Without(text))])
        : column)]);
}
