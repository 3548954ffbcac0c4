namespace SwingStudy.Ingestion.Intake;

/// <summary>What became of one file in one run.</summary>
public enum FileOutcome
{
    /// <summary>Its rows are in the study.</summary>
    Taken,

    /// <summary>Stored; a person must look at it before anything of it is taken.</summary>
    Held,

    /// <summary>The same bytes came before: nothing changed.</summary>
    Duplicate,

    /// <summary>A person decided to leave it out: stored, nothing taken.</summary>
    LeftOut,

    /// <summary>It holds a person who was erased: nothing stored, and it lies where it lay.</summary>
    Refused,

    /// <summary>It could not be read or is not finished; it lies where it lay.</summary>
    NotRead,
}
