using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Studies;
using SwingStudy.Storage.Files;
using SwingStudy.Storage.Identities;
using SwingStudy.Storage.Registry;
using SwingStudy.Storage.Tables;

namespace SwingStudy.App.Studies;

/// <summary>A study with its declarations, registry, identities and tables at hand; with the writer's lock when opened for writing.</summary>
internal sealed class OpenedStudy : IDisposable
{
    private readonly WriterLock? _lock;

    private OpenedStudy(StudySetup setup, WriterLock? writerLock, TimeProvider time)
    {
        _lock = writerLock;
        Setup = setup;
        Registry = new StudyRegistry(setup.Folder, time);
        Identities = new IdentityStore(setup.Folder);
        Tables = new TableStore(setup.Folder, time);
    }

    /// <summary>What is declared.</summary>
    public StudySetup Setup { get; }

    /// <summary>People, sessions, files, decisions, ledger.</summary>
    public StudyRegistry Registry { get; }

    /// <summary>Aliases and names.</summary>
    public IdentityStore Identities { get; }

    /// <summary>The versioned tables.</summary>
    public TableStore Tables { get; }

    /// <summary>Opens a study to look at it; others may write meanwhile.</summary>
    public static Outcome<OpenedStudy> ToRead(StudyFolder folder, TimeProvider time)
    {
        var setup = StudySetup.Read(folder);
        return setup.Succeeded(out var found) ? new OpenedStudy(found, null, time) : Outcome<OpenedStudy>.Failed(setup.Problems);
    }

    /// <summary>Opens a study to change it: one process at a time.</summary>
    public static Outcome<OpenedStudy> ToWrite(StudyFolder folder, TimeProvider time)
    {
        var setup = StudySetup.Read(folder);
        if (!setup.Succeeded(out var found))
            return Outcome<OpenedStudy>.Failed(setup.Problems);
        var taken = WriterLock.Take(folder);
        return taken.Succeeded(out var writerLock) ? new OpenedStudy(found, writerLock, time) : Outcome<OpenedStudy>.Failed(taken.Problems);
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        Identities.Dispose();
        Registry.Dispose();
        _lock?.Dispose();
    }
}
