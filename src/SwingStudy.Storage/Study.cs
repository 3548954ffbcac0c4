using SwingStudy.Domain.Studies;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Storage;

/// <summary>A study as analysts in .NET see it: its tables at any version, as rows, Arrow record batches or a data frame. Reads only.</summary>
/// <example>
/// <code>
/// var study = Study.Open("my-study");
/// DataFrame swings = study.Table("swings").ToDataFrame();
/// foreach (RecordBatch batch in study.Table("swings", version: 3).ToArrow(["participant", "club_speed"])) { … }
/// </code>
/// </example>
public sealed class Study
{
    private readonly TableStore _tables;

    private Study(StudyFolder folder)
    {
        Folder = folder;
        _tables = new TableStore(folder);
    }

    /// <summary>Where the study lies.</summary>
    public StudyFolder Folder { get; }

    /// <summary>Names of its tables.</summary>
    public IReadOnlyList<string> Tables => _tables.Names();

    /// <summary>Opens a study folder.</summary>
    /// <exception cref="DirectoryNotFoundException">No folder with tables.</exception>
    public static Study Open(string folder)
    {
        var study = new Study(new StudyFolder(Path.GetFullPath(folder)));
        return Directory.Exists(study.Folder.Tables)
            ? study
            : throw new DirectoryNotFoundException($"{study.Folder.Root} is not a study with tables: there is no folder {study.Folder.Tables}.");
    }

    /// <summary>One table.</summary>
    /// <param name="name">Its name, such as <c>swings</c>.</param>
    /// <param name="version">The version; the newest when null.</param>
    /// <exception cref="KeyNotFoundException">No such table.</exception>
    /// <exception cref="ArgumentOutOfRangeException">No such version.</exception>
    public StudyTable Table(string name, long? version = null) =>
        _tables.Existing(name) is { } table
            ? new StudyTable(table, version ?? table.CurrentVersion)
            : throw new KeyNotFoundException($"The study has no table '{name}'; it has {string.Join(", ", Tables)}.");
}
