using NodaTime;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Sources;
using SwingStudy.Ingestion.Recordings;

namespace SwingStudy.Ingestion.Intake;

/// <summary>
/// Gathers the recordings of one file as they come, player by player, nobody's apart; many are written at once. Nothing counts before the commit; dispose
/// without <see cref="Complete"/> and nothing stays.
/// </summary>
internal sealed class RecordingFiles(IntakeTables tables, SourceMapping mapping, Sha256 original, Func<string, string> aliasHash) : IDisposable
{
    private readonly SortedDictionary<string, PlayerFiles> _players = new(StringComparer.Ordinal);

    /// <summary>Adds a recording.</summary>
    /// <param name="recording">The recording.</param>
    /// <param name="participant">Its player; the default when nobody is named.</param>
    /// <param name="revisionOf">The capture that it replaces, or null.</param>
    public void Add(Recording recording, ParticipantId participant, string? revisionOf)
    {
        var partition = participant.ToString() is { Length: > 0 } code ? code : null;
        if (!_players.TryGetValue(partition ?? "", out var files))
            _players[partition ?? ""] = files = new PlayerFiles(tables, partition, original.ToString());
        var id = new CaptureId(original, recording.Row).ToString();
        var start = Instant.FromUnixTimeMilliseconds(recording.StartMillis);
        files.Captures.Add(
            ("capture_id", id), ("source", mapping.Source), ("device", mapping.Device), ("participant", partition), ("alias_hash", recording.Alias is null ? null : aliasHash(recording.Alias)),
            ("sequence", recording.Sequence), ("recorded_at", start), ("struck_at", StruckAt(recording)), ("purpose", Word.Of(recording.Purpose)),
            ("original_sha256", original.ToString()), ("original_row", recording.Row), ("revision_of", revisionOf));
        files.Add(id, recording);
    }

    /// <summary>Contact on the device's clock, to the millisecond; null when the device does not say.</summary>
    public static Instant? StruckAt(Recording recording) => recording.ContactSeconds is { } contact
        ? Instant.FromUnixTimeMilliseconds(recording.StartMillis + (long)Math.Round(contact * 1000))
        : null;

    /// <summary>What the file adds to the tables.</summary>
    public RecordingData Complete()
    {
        List<RecordingData> players = [.. _players.Values.Select(files => files.Complete())];
        return new RecordingData(Joined(data => data.Captures), Joined(data => data.Curves), Joined(data => data.Events));

        TableRows Joined(Func<RecordingData, TableRows> table) =>
            new([.. players.SelectMany(player => table(player).Files)], [.. players.SelectMany(player => table(player).Waiting)]);
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach (var files in _players.Values)
            files.Dispose();
    }
}
