using SwingStudy.Domain.Declarations;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Studies;
using SwingStudy.Pipeline.Masking;
using SwingStudy.Storage.Files;
using SwingStudy.Storage.Identities;
using SwingStudy.Storage.Originals;
using SwingStudy.Storage.Registry;
using SwingStudy.Storage.Tables;

namespace SwingStudy.App.Studies;

/// <summary>A study with its declarations, registry, identities and tables at hand; with the writer's lock when opened for writing.</summary>
internal sealed class OpenedStudy : IDisposable
{
    private readonly WriterLock? _lock;

    private OpenedStudy(StudySetup setup, StudyRegistry registry, TableStore tables, WriterLock? writerLock)
    {
        _lock = writerLock;
        Setup = setup;
        Registry = registry;
        ReadPlan();
        Identities = new IdentityStore(setup.Folder);
        Originals = new OriginalStore(setup.Folder, () => Identities.OriginalKeys);
        Tables = tables;
    }

    /// <summary>What is declared.</summary>
    public StudySetup Setup { get; private set; }

    /// <summary>What hides phases from a blind analyst; null where nobody is blind, or blind no more.</summary>
    public PhaseMask? Mask { get; private set; }

    /// <summary>People, sessions, files, decisions, ledger.</summary>
    public StudyRegistry Registry { get; }

    /// <summary>Aliases and names.</summary>
    public IdentityStore Identities { get; }

    /// <summary>The untouched bytes of what came in; encrypted where there is a vault.</summary>
    public OriginalStore Originals { get; }

    /// <summary>The versioned tables.</summary>
    public TableStore Tables { get; }

    /// <summary>Opens a study to look at it; others may write meanwhile.</summary>
    public static Outcome<OpenedStudy> ToRead(StudyFolder folder, TimeProvider time) => Open(folder, time, null, LockedProtocol.Edited, []);

    /// <summary>Opens a study to change it: one process at a time.</summary>
    /// <param name="folder">The study.</param>
    /// <param name="time">The clock.</param>
    /// <param name="tables">Names of tables whose logs are read while the declarations are; none where null.</param>
    public static Outcome<OpenedStudy> ToWrite(StudyFolder folder, TimeProvider time, IReadOnlyList<string>? tables = null) =>
        OpenLocked(folder, time, (study, registry) => LockedProtocol.Edited(study, registry) ?? UnfinishedErasure.Found(registry), tables);

    /// <summary>Opens a study to erase a person: the one case in which an erasure that was cut short may lie there.</summary>
    public static Outcome<OpenedStudy> ToErase(StudyFolder folder, TimeProvider time) => OpenLocked(folder, time, LockedProtocol.Edited);

    /// <summary>Opens a study to amend its protocol: the one case in which the file may differ from what is locked.</summary>
    public static Outcome<OpenedStudy> ToAmend(StudyFolder folder, TimeProvider time) => OpenLocked(folder, time, (_, _) => null);

    private static Outcome<OpenedStudy> OpenLocked(
        StudyFolder folder, TimeProvider time, Func<StudyFolder, StudyRegistry, Problem?> refusal, IReadOnlyList<string>? ahead = null)
    {
        if (!File.Exists(folder.StudyFile))
            return Outcome<OpenedStudy>.Failed(StudySetup.Read(folder).Problems);
        return WriterLock.Take(folder).Succeeded(out var writerLock, out var problems)
            ? Open(folder, time, writerLock, refusal, ahead ?? [])
            : Outcome<OpenedStudy>.Failed(problems);
    }

    private static Outcome<OpenedStudy> Open(
        StudyFolder folder, TimeProvider time, WriterLock? writerLock, Func<StudyFolder, StudyRegistry, Problem?> refusal, IReadOnlyList<string> ahead)
    {
        StudyRegistry? registry = null;
        var isOpen = false;
        try
        {
            // An edited protocol is refused as such whether or not it can still be read.
            registry = File.Exists(folder.Registry) ? new StudyRegistry(folder, time) : null;
            if (registry is not null && refusal(folder, registry) is { } problem)
                return problem;
            var tables = new TableStore(folder, time);
            if (ahead.Count > 0)
                tables.ReadAhead(ahead);
            if (!StudySetup.Read(folder).Succeeded(out var setup, out var problems))
                return Outcome<OpenedStudy>.Failed(problems);
            var study = new OpenedStudy(setup, registry ??= new StudyRegistry(folder, time), tables, writerLock);
            isOpen = true;
            return study;
        }
        finally
        {
            if (!isOpen)
            {
                registry?.Dispose();
                writerLock?.Dispose();
            }
        }
    }

    /// <summary>Reads versions, draws and blindness again, after an act that changed them.</summary>
    public void ReadPlan()
    {
        Setup = Setup with { History = Registry.Protocol.History(), Schedule = Registry.Protocol.Schedule() };
        Mask = PhaseMask.Of(Setup.Protocol, Registry.Protocol);
    }

    /// <summary>Makes another file the study's protocol, where it can be read; otherwise the study keeps what it has.</summary>
    /// <returns>The problems of that file; empty when it was taken.</returns>
    public IReadOnlyList<Problem> TakeProtocol(string file)
    {
        if (!File.Exists(file))
            return [new Problem("protocol-not-found", new Place(file), "no such file", "the amended protocol", "Name a file, or edit protocol.yaml and name none.")];
        if (!ProtocolReader.Read(file, Setup.Dictionary).Succeeded(out _, out var problems))
            return problems;
        if (Path.GetFullPath(file) != Path.GetFullPath(Setup.Folder.ProtocolFile))
            LockedProtocol.Write(Setup.Folder, File.ReadAllBytes(file));
        Setup = Setup with { Protocol = ProtocolReader.Read(Setup.Folder.ProtocolFile, Setup.Dictionary).Value! };
        return [];
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        Originals.Dispose();
        Identities.Dispose();
        Registry.Dispose();
        _lock?.Dispose();
    }
}
