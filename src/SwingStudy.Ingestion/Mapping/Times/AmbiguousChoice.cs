namespace SwingStudy.Ingestion.Mapping.Times;

/// <summary>What a person decided for the local times of a file that occur twice when clocks go back.</summary>
public enum AmbiguousChoice
{
    /// <summary>All of them before the clocks went back.</summary>
    Earlier,

    /// <summary>All of them after.</summary>
    Later,
}
