using System.Text.Json;
using NodaTime.Text;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Studies;
using SwingStudy.Storage.Registry;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Pipeline.Running;

/// <summary>The hash of everything that one unit of work depends on: equal hash, equal output.</summary>
internal static class InputHash
{
    /// <summary>Hashes content-named files, registry rows, settings, dictionary and code version.</summary>
    public static Sha256 Of(BoundStage stage, StudySetup setup, WorkUnit unit, IReadOnlyList<DataFile>[] files, IReadOnlyList<Decision> decisions) =>
        Sha256.Of(JsonSerializer.Serialize(new
        {
            stage = stage.Declaration.Name,
            version = stage.Declaration.CodeVersion,
            unit = unit.Name,
            settings = stage.Settings,
            dictionary = setup.Dictionary.Hash.ToString(),
            inputs = stage.Inputs.Select((input, i) => new { input.Table.Name, Files = files[i].Select(file => file.Path) }),
            times = unit.Times.Select(range => new[] { range.FromMillis, range.ToMillis }),
            session = stage.Declaration.SeesSession && unit.Session is { } session ? Text(session) : null,
            sessions = unit.Sessions.Select(part => new
            {
                part.Name,
                times = part.Times.Select(range => new[] { range.FromMillis, range.ToMillis }),
                session = stage.Declaration.SeesSession && part.Session is { } of ? Text(of) : null,
            }),
            decisions = decisions.Select(decision => new { decision.Id, decision.Kind, decision.Subject, decision.Actor, decision.Reason }),
        }));

    private static object Text(SessionRecord session) => new
    {
        session.Id,
        Participant = session.Participant.ToString(),
        StartedAt = InstantPattern.ExtendedIso.Format(session.StartedAt),
        StartedLocal = LocalDateTimePattern.ExtendedIso.Format(session.StartedLocal),
        session.Phase,
        session.Site,
        session.Club,
        session.Ball,
        session.Surface,
        session.Cue,
        session.PlannedSwings,
        session.Variables,
        session.Note,
    };
}
