using NodaTime;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Protocols;
using SwingStudy.Domain.Tables;

namespace SwingStudy.App.Studies;

/// <summary>What of each phase had been taken at some moment: written beside every lock, amendment and unblinding, as what could have been known.</summary>
internal static class TakenData
{
    /// <summary>Sessions that have begun and swings in the tables, by phase of the protocol, then of phases that it does not have.</summary>
    public static IReadOnlyList<PhaseData> Of(OpenedStudy study, Instant now)
    {
        var swings = Swings(study);
        var sessions = study.Registry.Sessions().Where(session => session.StartedAt <= now).CountBy(session => session.Phase ?? "").ToDictionary(StringComparer.Ordinal);
        return
        [
            .. study.Setup.Protocol.Phases.Select(phase => phase.Name)
                .Concat(swings.Keys.Concat(sessions.Keys).Order(StringComparer.Ordinal)).Distinct(StringComparer.Ordinal)
                .Select(phase => new PhaseData(
                    phase,
                    study.Setup.Protocol.Phase(phase) is { } known ? Word.Of(known.Role) : "",
                    sessions.GetValueOrDefault(phase),
                    swings.GetValueOrDefault(phase))),
        ];
    }

    private static Dictionary<string, long> Swings(OpenedStudy study)
    {
        var counts = new Dictionary<string, long>(StringComparer.Ordinal);
        var table = study.Tables.Table(StudyTables.Swings(study.Setup.Dictionary));
        if (table.CurrentVersion < 0)
            return counts;
        foreach (var phase in table.Read(columns: ["phase"]).SelectMany(rows => rows.Texts("phase").ToArray()))
            counts[phase ?? ""] = counts.GetValueOrDefault(phase ?? "") + 1;
        return counts;
    }
}
