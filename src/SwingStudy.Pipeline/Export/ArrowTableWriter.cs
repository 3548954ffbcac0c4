using Apache.Arrow.Ipc;
using SwingStudy.Domain.Tables;
using SwingStudy.Storage.Interchange;

namespace SwingStudy.Pipeline.Export;

/// <summary>Writes rows as an Arrow IPC file: one record batch for each set of rows, titles and units in the fields' metadata, no compression.</summary>
internal sealed class ArrowTableWriter : IDisposable
{
    private readonly FileStream _stream;
    private readonly ArrowFileWriter _writer;

    /// <summary>Creates the file.</summary>
    public ArrowTableWriter(string path, TableDefinition table)
    {
        _stream = File.Create(path);
        _writer = new ArrowFileWriter(_stream, ArrowBatch.SchemaOf(table));
        _writer.WriteStart();
    }

    /// <summary>Appends rows as one batch.</summary>
    public void Append(RowSet rows)
    {
        using var batch = ArrowBatch.Of(rows);
        _writer.WriteRecordBatch(batch);
    }

    /// <summary>Finishes the file.</summary>
    public void Dispose()
    {
        _writer.WriteEnd();
        _writer.Dispose();
        _stream.Dispose();
    }
}
