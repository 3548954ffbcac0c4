namespace SwingStudy.Ingestion.Redaction;

/// <summary>What becomes of a file that holds a person.</summary>
public enum RedactionKind
{
    /// <summary>The person does not stand in it.</summary>
    Untouched,

    /// <summary>The person's rows are cut out, all others stand as they stood, on the same lines.</summary>
    Cut,

    /// <summary>Nothing of it may stay: it is the person's alone, or its format cannot be cut.</summary>
    Whole,
}
