using Spectre.Console;
using SwingStudy.App.Studies;
using SwingStudy.App.Terminal;
using SwingStudy.Storage.Registry;

namespace SwingStudy.App.Commands;

/// <summary>What commands about one session give back.</summary>
internal static class SessionResult
{
    /// <summary>The session, and what is stopped: then a person is needed.</summary>
    public static CommandResult Of(SessionRecord session, IReadOnlyList<SessionStop> stops, string text, long? entry = null) => new(
        stops.Count > 0 ? ExitCode.NeedsPerson : ExitCode.Done,
        new { session = session.Id, session.Phase, session.Revision, entry, stopped = SafetyRecords.Documents(stops) },
        console =>
        {
            console.WriteLine(text);
            SafetyRecords.Write(console, stops);
        });

    /// <summary>A session of that name, or why there is none.</summary>
    public static SessionRecord? Find(OpenedStudy study, string id, out CommandResult? failure)
    {
        var found = study.Registry.Sessions().FirstOrDefault(session => session.Id == id);
        failure = found is not null ? null : CommandResult.Failed(ExitCode.InvalidInput, "session-unknown", id, "no session of that name", "a session of the study", "'swingstudy session list' shows them.");
        return found;
    }
}
