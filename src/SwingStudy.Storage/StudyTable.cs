using Apache.Arrow;
using Microsoft.Data.Analysis;
using SwingStudy.Domain.Tables;
using SwingStudy.Storage.Interchange;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Storage;

/// <summary>One table of a study at one version.</summary>
public sealed class StudyTable
{
    private readonly DeltaTable _table;

    internal StudyTable(DeltaTable table, long version)
    {
        _table = table;
        Version = version;
        Definition = table.DefinitionAt(version);
    }

    /// <summary>The version.</summary>
    public long Version { get; }

    /// <summary>Name, columns with titles and units.</summary>
    public TableDefinition Definition { get; }

    /// <summary>All versions of the table.</summary>
    public IReadOnlyList<TableVersion> History => _table.History();

    /// <summary>The rows, streamed in sets of columns.</summary>
    /// <param name="columns">Columns to read; all when null.</param>
    /// <param name="participant">Only this participant's rows.</param>
    public IEnumerable<RowSet> Rows(IReadOnlyList<string>? columns = null, string? participant = null) =>
        _table.Read(Version, columns ?? [.. Definition.Columns.Select(column => column.Name)], participant);

    /// <summary>The rows as Arrow record batches; title and unit of a column stand in its field's metadata.</summary>
    public IEnumerable<RecordBatch> ToArrow(IReadOnlyList<string>? columns = null, string? participant = null) =>
        Rows(columns, participant).Select(ArrowBatch.Of);

    /// <summary>All rows as a data frame. Lists, such as the samples of curves, have no place in one and are left out.</summary>
    public DataFrame ToDataFrame(IReadOnlyList<string>? columns = null, string? participant = null)
    {
        var names = (columns ?? [.. Definition.Columns.Select(column => column.Name)]).Where(name => Definition[name].Kind != ColumnKind.NumberList).ToList();
        return FrameOfRows.Of(Definition with { Columns = [.. names.Select(name => Definition[name])] }, [.. Rows(names, participant)]);
    }
}
