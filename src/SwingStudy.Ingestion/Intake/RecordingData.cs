using SwingStudy.Storage.Tables;

namespace SwingStudy.Ingestion.Intake;

/// <summary>Data files of one file of recordings.</summary>
internal sealed record RecordingData(IReadOnlyList<DataFile> Captures, IReadOnlyList<DataFile> Curves, IReadOnlyList<DataFile> Events)
{
    /// <summary>None.</summary>
    public static RecordingData None { get; } = new([], [], []);
}
