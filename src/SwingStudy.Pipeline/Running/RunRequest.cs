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

    /// <summary>Units of a stage computed at the same time; null: as many as there are processors. With 1, stages come one after another too.</summary>
    public int? Parallel { get; init; }

    /// <summary>Told after each unit, on the thread that did it; stages may be told of in turns.</summary>
    public IProgress<RunProgress>? Progress { get; init; }
}
