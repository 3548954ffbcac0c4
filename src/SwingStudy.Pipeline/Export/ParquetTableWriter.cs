using SwingStudy.Domain.Studies;
using SwingStudy.Domain.Tables;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Pipeline.Export;

/// <summary>Writes rows as one Parquet file that stands alone: the partition column is a column of the file.</summary>
internal sealed class ParquetTableWriter : IDisposable
{
    private readonly string _path;
    private readonly string _work;
    private readonly TableDefinition _table;
    private readonly DeltaTable _target;
    private readonly DataFileWriter _writer;

    /// <summary>Starts the file; it appears under its name when disposed.</summary>
    public ParquetTableWriter(string path, TableDefinition table)
    {
        _path = path;
        _work = path + ".work";
        _table = table with { PartitionColumn = null };
        _target = new TableStore(new StudyFolder(_work)).Table(_table);
        _writer = _target.NewFile(null, table.Name);
    }

    /// <summary>Appends rows as one row group.</summary>
    public void Append(RowSet rows) => _writer.Append(new RowSet(_table, rows.Columns));

    /// <summary>Finishes the file.</summary>
    public void Dispose()
    {
        var written = _writer.Complete();
        _writer.Dispose();
        File.Move(_target.FullPath(written), _path, overwrite: true);
        Directory.Delete(_work, recursive: true);
    }
}
