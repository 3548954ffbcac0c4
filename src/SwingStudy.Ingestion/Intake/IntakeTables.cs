using SwingStudy.Domain.Tables;
using SwingStudy.Domain.Variables;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Ingestion.Intake;

/// <summary>The tables that intake writes.</summary>
internal sealed class IntakeTables(TableStore tables, VariableDictionary dictionary)
{
    /// <summary>Captures.</summary>
    public DeltaTable Captures { get; } = tables.Table(StudyTables.Captures(dictionary));

    /// <summary>Curves of captures.</summary>
    public DeltaTable Curves { get; } = tables.Table(StudyTables.Curves);

    /// <summary>Events that devices marked.</summary>
    public DeltaTable Events { get; } = tables.Table(StudyTables.CaptureEvents);

    /// <summary>What could not be taken.</summary>
    public DeltaTable Rejects { get; } = tables.Table(StudyTables.Rejects);
}
