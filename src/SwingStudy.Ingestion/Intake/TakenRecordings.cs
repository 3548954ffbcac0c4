using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Problems;
using SwingStudy.Ingestion.Mapping;
using SwingStudy.Ingestion.Mapping.Rows;
using SwingStudy.Ingestion.Readers;
using SwingStudy.Ingestion.Recordings;

namespace SwingStudy.Ingestion.Intake;

/// <summary>What became of the recordings of a file.</summary>
internal sealed class TakenRecordings
{
    /// <summary>Player of each name in the file.</summary>
    public Dictionary<string, ParticipantId> People { get; } = new(StringComparer.Ordinal);

    /// <summary>Names that stand for nobody.</summary>
    public HashSet<string> UnknownNames { get; } = new(StringComparer.Ordinal);

    /// <summary>Place of each recording in the file, by player and key.</summary>
    public Dictionary<(ParticipantId Participant, CaptureKey Key), int> Rows { get; } = [];

    /// <summary>Why the file is held.</summary>
    public List<Problem> Problems { get; } = [];

    /// <summary>Recordings that replace earlier ones.</summary>
    public List<RowRevision> Revisions { get; } = [];

    /// <summary>Recordings that are stored.</summary>
    public int Stored { get; set; }

    /// <summary>Recordings that the study has already.</summary>
    public int Repeats { get; set; }

    /// <summary>Lines of those.</summary>
    public long RepeatedLines { get; set; }

    /// <summary>Data files.</summary>
    public RecordingData Data { get; private set; } = RecordingData.None;

    /// <summary>The balance.</summary>
    public LineCounts Counts { get; private set; } = LineCounts.None;

    /// <summary>Lines and cells that could not be taken.</summary>
    public IReadOnlyList<MappedReject> Rejects { get; private set; } = [];

    /// <summary>What should be known.</summary>
    public IReadOnlyList<Problem> Remarks { get; private set; } = [];

    /// <summary>What stands above the samples.</summary>
    public IReadOnlyList<PreambleLine> Preamble { get; private set; } = [];

    /// <summary>Encoding, sign between cells and decimal sign of text.</summary>
    public (string? Encoding, char? Delimiter, char? Decimal) Text { get; private set; }

    /// <summary>Adds what is known at the end of the file.</summary>
    public TakenRecordings With(RecordingData data, IRecordingReader reader)
    {
        Data = data;
        Counts = reader.Counts.Moved(Stored == 0 ? reader.Counts.Taken : Math.Min(RepeatedLines, reader.Counts.Taken), "repeat");
        (Rejects, Remarks, Preamble) = (reader.Rejects, reader.Remarks, reader.Preamble);
        Text = (reader.Encoding, reader.Delimiter, reader.Decimal);
        return this;
    }
}
