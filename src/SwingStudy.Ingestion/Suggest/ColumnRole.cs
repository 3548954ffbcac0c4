namespace SwingStudy.Ingestion.Suggest;

/// <summary>What a column can be beside a variable.</summary>
internal enum ColumnRole
{
    /// <summary>Names the player.</summary>
    Participant,

    /// <summary>A date.</summary>
    Date,

    /// <summary>A time of day.</summary>
    TimeOfDay,

    /// <summary>Date and time together.</summary>
    Moment,

    /// <summary>The device's number of the record.</summary>
    Sequence,

    /// <summary>The phase of a session.</summary>
    Phase,

    /// <summary>The name of a reading, in exports with one row a reading.</summary>
    ReadingName,

    /// <summary>The value of a reading.</summary>
    ReadingValue,

    /// <summary>The unit of a reading.</summary>
    ReadingUnit,
}
