using System.Globalization;
using System.Text.Json;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Protocols;
using SwingStudy.Domain.Studies;
using SwingStudy.Pipeline.Draws;
using SwingStudy.Storage.Registry;

namespace SwingStudy.Pipeline.Audit;

/// <summary>Whether each version of the protocol is the text whose hash the ledger holds, and each draw what its seed gives.</summary>
/// <param name="setup">The study's declarations, with history and schedule.</param>
/// <param name="registry">Its registry.</param>
internal sealed class ProtocolVerification(StudySetup setup, StudyRegistry registry)
{
    private const string Mend = "Bring study.db back from a backup.";

    /// <summary>The check.</summary>
    public AuditCheck Run()
    {
        var history = registry.Protocol.History();
        var draws = registry.Protocol.Schedule().Draws;
        return new AuditCheck("protocol", history.Versions.Count + draws.Count, "versions of the protocol, hash recomputed, and draws, drawn again from their seed",
            [.. Versions(history), .. draws.Where(Differs).Select(draw => Tampered("draw", draw.Number, "what is stored is not what its seed gives", "the assignments that were drawn"))]);
    }

    private IEnumerable<Problem> Versions(ProtocolHistory history)
    {
        var recorded = registry.Ledger.Entries().Where(entry => entry.Act is "protocol.lock" or "protocol.amend").Select(HashOf).ToList();
        foreach (var version in history.Versions)
        {
            if (Sha256.Of(version.Text) != version.Hash || recorded.ElementAtOrDefault(version.Number - 1) != version.Hash.ToString())
                yield return Tampered("protocol", version.Number, "its text does not have the hash that the ledger holds", "the text that was locked");
        }

        if (recorded.Count != history.Versions.Count)
        {
            yield return new Problem("protocol-tampered", new Place("study.db"), string.Create(CultureInfo.InvariantCulture, $"{history.Versions.Count} versions of the protocol"),
                string.Create(CultureInfo.InvariantCulture, $"{recorded.Count}, as the ledger holds"), Mend);
        }
    }

    private static string? HashOf(LedgerEntry entry)
    {
        using var details = JsonDocument.Parse(entry.Details);
        return details.RootElement.TryGetProperty("hash", out var hash) ? hash.GetString() : null;
    }

    /// <summary>Draws again, where the version that was drawn from still holds and nobody was erased since.</summary>
    private bool Differs(Draw draw)
    {
        if (registry.Erasures().Any(erasure => erasure.StartedAt >= draw.At))
            return false;
        var here = registry.Participants().Select(person => person.Code.ToString()).ToHashSet(StringComparer.Ordinal);
        if (draw.ProtocolVersion != setup.History.Current?.Number || DrawPlan.Of(setup.Protocol) is not { } plan || !draw.Players.All(player => here.Contains(player.Participant)))
            return false;
        if (draw.Players.Count == 0 || (plan.IsJoint && draw.Players.Count != plan.Windows.Count))
            return true;
        var again = RandomDraw.Make(setup.Protocol, plan, draw.Players.Select(player => player.Participant), new DrawRecord(draw.Number, draw.ProtocolVersion, draw.At, draw.Actor));
        return !again.Players.Select(player => (player.Participant, player.Assignment)).SequenceEqual(draw.Players.Select(player => (player.Participant, player.Assignment)));
    }

    private static Problem Tampered(string what, int number, string found, string expected) =>
        new($"{what}-tampered", new Place(string.Create(CultureInfo.InvariantCulture, $"{what} {number}")), found, expected, Mend);
}
