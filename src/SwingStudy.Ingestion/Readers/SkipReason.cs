namespace SwingStudy.Ingestion.Readers;

/// <summary>Why a record below the headings is no data, as far as the reader can tell.</summary>
public enum SkipReason
{
    /// <summary>No text in any cell.</summary>
    Blank,

    /// <summary>The headings again, as in files put together from several.</summary>
    RepeatedHeading,

    /// <summary>The units again.</summary>
    RepeatedUnits,
}
