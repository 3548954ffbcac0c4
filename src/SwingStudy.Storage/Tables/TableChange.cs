namespace SwingStudy.Storage.Tables;

/// <summary>What one commit adds to and takes from a table.</summary>
public sealed record TableChange
{
    /// <summary>Files to add, from <see cref="DataFileWriter.Complete"/>.</summary>
    public IReadOnlyList<DataFile> Adds { get; init; } = [];

    /// <summary>Paths of files whose rows no longer count; the files stay for older versions.</summary>
    public IReadOnlyList<string> Removes { get; init; } = [];

    /// <summary>Units whose files are all replaced by <see cref="Adds"/>.</summary>
    public IReadOnlyList<string> ReplacedUnits { get; init; } = [];

    /// <summary>Why.</summary>
    public required CommitInfo Info { get; init; }

    /// <summary>The version from which the change was computed: a later change of the same units is then a conflict. Null: the newest wins.</summary>
    public long? BasedOn { get; init; }

    /// <summary>Name and number of an act that must count once: a commit whose number is not above the recorded one does nothing.</summary>
    public (string Application, long Number)? Once { get; init; }
}
