using NodaTime;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Sources;
using SwingStudy.Ingestion.Recordings;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Ingestion.Intake;

/// <summary>
/// Writes the recordings of one file as they come: one data file a table and player, nobody's apart. Nothing counts before the commit; dispose without
/// <see cref="Complete"/> and nothing stays.
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

    /// <summary>Finishes the files.</summary>
    public RecordingData Complete()
    {
        foreach (var files in _players.Values)
            files.Flush();
        return new RecordingData(
            [.. _players.Values.Select(files => files.CompleteCaptures())], [.. _players.Values.Select(files => files.CompleteCurves())],
            [.. _players.Values.Select(files => files.CompleteEvents()).OfType<DataFile>()]);
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach (var files in _players.Values)
            files.Dispose();
    }
}
