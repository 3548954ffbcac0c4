namespace SwingStudy.Pipeline.Running;

/// <summary>What to bring up to date.</summary>
public sealed record RunRequest
{
    /// <summary>Only this stage; null: all.</summary>
    public string? Stage { get; init; }

    /// <summary>Only units of this player, and what the whole study needs; null: everybody.</summary>
    public string? Participant { get; init; }

    /// <summary>Who runs, for the ledger.</summary>
    public required string Actor { get; init; }

    /// <summary>Units computed at the same time; null: as many as there are processors.</summary>
    public int? Parallel { get; init; }

    /// <summary>Told after each unit.</summary>
    public IProgress<RunProgress>? Progress { get; init; }
}
