namespace SwingStudy.Ingestion.Readers;

/// <summary>The rows of one opened file.</summary>
internal interface IBlockReader : IDisposable
{
    /// <summary>Reads from the first row to the last, counting lines in <paramref name="counts"/>; may be called again once the last is done.</summary>
    IEnumerable<RawBlock> Read(RecordCounts counts);
}
