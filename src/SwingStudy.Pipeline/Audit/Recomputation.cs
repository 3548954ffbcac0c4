using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Studies;
using SwingStudy.Pipeline.Running;
using SwingStudy.Storage.Registry;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Pipeline.Audit;

/// <summary>Computes every derived table again from the tables it was made of, and compares file by file.</summary>
/// <remarks>A data file's name holds the hash of its bytes, so equal names mean equal bytes. Nothing in the study is written.</remarks>
/// <param name="setup">The study's declarations.</param>
/// <param name="registry">Its registry.</param>
/// <param name="stages">The stages in their order.</param>
/// <param name="time">The clock; no result depends on it.</param>
public sealed class Recomputation(StudySetup setup, StudyRegistry registry, IReadOnlyList<Stage> stages, TimeProvider? time = null)
{
    private readonly TimeProvider _time = time ?? TimeProvider.System;

    /// <summary>One check a table, stage by stage.</summary>
    /// <param name="workFolder">An empty folder for the second set of files; the caller removes it.</param>
    public IEnumerable<AuditCheck> Run(string workFolder)
    {
        var scratch = new TableStore(new StudyFolder(workFolder), _time);
        var store = new TableStore(setup.Folder, _time);
        List<BoundStage> all = [.. stages.Select(stage => stage.Bind(setup))];
        var runner = new StageRunner(setup, registry, store, new SharedRows(all, store), _time, "", new RunRequest { Actor = "" });
        foreach (var bound in all)
        {
            var computed = runner.Recompute(bound, scratch).SelectMany(unit => unit.Written).ToLookup(file => file.Table, file => file.File, StringComparer.Ordinal);
            foreach (var table in bound.Outputs.Values)
                yield return Compare(table.Name, bound.Declaration.Name, store.Table(table).Files(), [.. computed[table.Name]]);
        }
    }

    private static AuditCheck Compare(string table, string stage, IReadOnlyList<DataFile> stored, IReadOnlyList<DataFile> computed)
    {
        var (kept, again) = (Paths(stored), Paths(computed));
        List<Problem> problems =
        [
            .. stored.Where(file => !again.Contains(file.Path)).Select(file => Problem(file, "a file that computing it again does not give")),
            .. computed.Where(file => !kept.Contains(file.Path)).Select(file => Problem(file, "not the file that computing it again gives")),
        ];
        return new AuditCheck($"recomputed {table}", computed.Count, $"Parquet files of {table}, computed again by '{stage}'", problems);

        Problem Problem(DataFile file, string found) => new(
            "recomputed-differs", new Place($"tables/{table}/{file.Path}"), $"{found} (unit {file.Unit})", "the same bytes, computed again from the same input",
            "Run 'swingstudy run'. If this stays, the table was changed by other means than this program, or made by another version of it: 'swingstudy audit log' tells.");
    }

    private static HashSet<string> Paths(IEnumerable<DataFile> files) => files.Select(file => file.Path).ToHashSet(StringComparer.Ordinal);
}
