using Microsoft.Data.Sqlite;
using SwingStudy.Domain.Protocols;

namespace SwingStudy.Storage.Registry;

/// <summary>What the registry knows of the protocol: its versions, its draws, and whether the analyst is still blind.</summary>
public sealed class ProtocolRecords
{
    private readonly SqliteConnection _connection;

    internal ProtocolRecords(SqliteConnection connection) => _connection = connection;

    /// <summary>The lock and every amendment, oldest first.</summary>
    public ProtocolHistory History() =>
        new(StudyRegistry.Query(_connection, "SELECT * FROM protocol_versions ORDER BY number", null, ProtocolRows.Version));

    /// <summary>Every draw, oldest first, with its players by code.</summary>
    public Schedule Schedule()
    {
        var players = StudyRegistry.Query(_connection, "SELECT * FROM drawn_players ORDER BY draw, participant", null, row => (Draw: row.Whole("draw"), Player: ProtocolRows.Player(row)))
            .ToLookup(pair => pair.Draw, pair => pair.Player);
        return new(StudyRegistry.Query(_connection, "SELECT * FROM draws ORDER BY number", null, row => ProtocolRows.Draw(row, [.. players[row.Whole("number")]])));
    }

    /// <summary>The codes of a blind analyst, by kind and name; empty where nobody is blind.</summary>
    public IReadOnlyList<MaskedName> MaskedNames() =>
        StudyRegistry.Query(_connection, "SELECT * FROM masked_names ORDER BY kind, name", null, ProtocolRows.MaskedName);

    /// <summary>The act that ended the analyst's blindness; null as long as it lasts, or where nobody was blind.</summary>
    public Unblinding? Unblinding() =>
        StudyRegistry.Query(_connection, "SELECT * FROM unblindings ORDER BY id LIMIT 1", null, ProtocolRows.Unblinding).SingleOrDefault();
}
