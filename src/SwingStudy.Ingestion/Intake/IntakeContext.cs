using SwingStudy.Domain.Protocols;
using SwingStudy.Domain.Sources;
using SwingStudy.Domain.Studies;
using SwingStudy.Domain.Variables;
using SwingStudy.Storage.Identities;
using SwingStudy.Storage.Registry;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Ingestion.Intake;

/// <summary>A study opened for writing: the caller holds the writer's lock and disposes of what is in here.</summary>
public sealed record IntakeContext
{
    /// <summary>Where the study lies.</summary>
    public required StudyFolder Folder { get; init; }

    /// <summary>IANA zone in which the study's days are told.</summary>
    public required string Zone { get; init; }

    /// <summary>The variables.</summary>
    public required VariableDictionary Dictionary { get; init; }

    /// <summary>Who may take part: it tells who counts as a minor.</summary>
    public required Eligibility Eligibility { get; init; }

    /// <summary>The source mappings.</summary>
    public required IReadOnlyList<SourceMapping> Mappings { get; init; }

    /// <summary>People, sessions, files, decisions, ledger.</summary>
    public required StudyRegistry Registry { get; init; }

    /// <summary>Names and aliases.</summary>
    public required IdentityStore Identities { get; init; }

    /// <summary>The versioned tables.</summary>
    public required TableStore Tables { get; init; }

    /// <summary>The clock.</summary>
    public TimeProvider Time { get; init; } = TimeProvider.System;

    /// <summary>Who acts, for the ledger.</summary>
    public string Actor { get; init; } = "intake";

    /// <summary>Threads that may work at once; no result depends on it.</summary>
    public int Threads { get; init; } = Environment.ProcessorCount;

    /// <summary>A file that changed within this time may still be being written.</summary>
    public TimeSpan Settling { get; init; } = TimeSpan.FromSeconds(2);
}
