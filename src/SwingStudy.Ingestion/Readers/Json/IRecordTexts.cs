namespace SwingStudy.Ingestion.Readers.Json;

/// <summary>The raw texts of the records of a JSON file.</summary>
internal interface IRecordTexts : IDisposable
{
    /// <summary>What stands around the records, as lines.</summary>
    IReadOnlyList<PreambleLine> Preamble { get; }

    /// <summary>Each record in file order, counting lines in <paramref name="counts"/>.</summary>
    IEnumerable<RecordText> Read(RecordCounts counts);
}
