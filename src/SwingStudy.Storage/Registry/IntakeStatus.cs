namespace SwingStudy.Storage.Registry;

/// <summary>What became of a file.</summary>
public enum IntakeStatus
{
    /// <summary>Its rows are in the tables.</summary>
    Taken,

    /// <summary>Stored, waiting for a person; nothing of it is in the tables.</summary>
    Held,

    /// <summary>Stored, and a person said that it is not wanted.</summary>
    Rejected,
}
