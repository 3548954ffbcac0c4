namespace SwingStudy.Ingestion.Intake;

/// <summary>What one file of recordings adds to the tables.</summary>
internal sealed record RecordingData(TableRows Captures, TableRows Curves, TableRows Events)
{
    /// <summary>Nothing.</summary>
    public static RecordingData None { get; } = new(TableRows.None, TableRows.None, TableRows.None);
}
