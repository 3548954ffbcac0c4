namespace SwingStudy.Ingestion.Readers.Json;

/// <summary>The raw texts of the records of a JSON file.</summary>
internal interface IRecordTexts : IDisposable
{
    /// <summary>Each record in file order, counting lines in <paramref name="counts"/>.</summary>
    IEnumerable<RecordText> Read(RecordCounts counts);
}
