using System.Text;
using System.Text.Json;
using NodaTime;
using SwingStudy.App.Terminal;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Protocols;

namespace SwingStudy.App.Studies;

/// <summary>Locks and amends the protocol of a study.</summary>
internal static class ProtocolVersions
{
    /// <summary>Stores the protocol that lies in the folder as the next version, with what had been taken by then.</summary>
    /// <param name="study">The study, its protocol read.</param>
    /// <param name="context">Who and when.</param>
    /// <param name="reason">Why it is amended; null for the lock.</param>
    /// <param name="known">What was already known, in words; null when nothing was said.</param>
    /// <returns>The version.</returns>
    public static ProtocolVersion Store(OpenedStudy study, CommandContext context, string? reason, string? known)
    {
        var protocol = study.Setup.Protocol;
        var earlier = study.Setup.History.Current;
        var now = Instant.FromDateTimeOffset(context.Time.GetUtcNow());
        var version = new ProtocolVersion
        {
            Number = 1 + (earlier?.Number ?? 0),
            Hash = protocol.Hash,
            Version = protocol.Version.ToString(),
            Text = Encoding.UTF8.GetString(File.ReadAllBytes(study.Setup.Folder.ProtocolFile)),
            At = now,
            Actor = context.Actor,
            Reason = reason,
            Known = known,
            Taken = TakenData.Of(study, now),
            Comparisons = PlannedComparison.Of(protocol),
        };
        if (Sha256.Of(version.Text) != version.Hash)
            throw new InvalidOperationException($"{study.Setup.Folder.ProtocolFile} changed while it was read.");
        study.Registry.Act(context.Actor, earlier is null ? "protocol.lock" : "protocol.amend", act =>
        {
            act.Add(version);
            foreach (var name in BlindCodes.Missing(protocol, study.Registry.Protocol.MaskedNames()))
                act.Add(name);
            return Details(version, earlier);
        });
        study.ReadPlan();
        return version;
    }

    private static string Details(ProtocolVersion version, ProtocolVersion? earlier)
    {
        var was = earlier?.Comparisons ?? [];
        return JsonSerializer.Serialize(new
        {
            version = version.Number,
            declared = version.Version,
            hash = version.Hash.ToString(),
            previous_hash = earlier?.Hash.ToString(),
            reason = version.Reason,
            known = version.Known,
            taken = version.Taken.Select(data => new { phase = data.Phase, sessions = data.Sessions, swings = data.Swings }),
            planned_new = version.Comparisons.Except(was).Select(comparison => $"{comparison.Outcome}/{comparison.Contrast}"),
            planned_no_more = was.Except(version.Comparisons).Select(comparison => $"{comparison.Outcome}/{comparison.Contrast}"),
        });
    }
}
