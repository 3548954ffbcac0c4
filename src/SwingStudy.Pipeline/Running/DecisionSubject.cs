using System.Text.Json;
using SwingStudy.Storage.Registry;

namespace SwingStudy.Pipeline.Running;

/// <summary>What a human decision is about: the members of the JSON object in <see cref="Decision.Subject"/>.</summary>
/// <param name="Participant"><c>participant</c>: the player. Where it is left out, it is that of the swing.</param>
/// <param name="Swing"><c>swing</c>: the swing that is excluded, included or matched to; null in a match that takes a capture out of every swing.</param>
/// <param name="Capture"><c>capture</c>: the capture. With <c>exclude</c> and <c>include</c> it names the swing for good, whatever its number becomes.</param>
/// <param name="Variable"><c>variable</c>: the one value that is meant; null when the whole swing is.</param>
/// <param name="With"><c>with</c>: in a match, a capture of the swing that is meant; it names the swing for good.</param>
public sealed record DecisionSubject(string? Participant, string? Swing, string? Capture, string? Variable, string? With = null)
{
    /// <summary>Reads the subject of a decision.</summary>
    /// <exception cref="JsonException">It is no JSON object.</exception>
    public static DecisionSubject Of(Decision decision)
    {
        using var document = JsonDocument.Parse(decision.Subject);
        var swing = Text(document.RootElement, "swing");
        return new DecisionSubject(
            Text(document.RootElement, "participant") ?? swing?[..Math.Max(0, swing.IndexOf('-', StringComparison.Ordinal))],
            swing,
            Text(document.RootElement, "capture"),
            Text(document.RootElement, "variable"),
            Text(document.RootElement, "with"));
    }

    /// <summary>Whether it may concern swings of a player; one that names a capture alone may concern anybody, one that names a player alone all of theirs.</summary>
    public bool Concerns(string? participant) =>
        (Swing ?? Capture ?? Participant) is not null && (participant is null || Participant is null || Participant == participant);

    private static string? Text(JsonElement subject, string name) =>
        subject.TryGetProperty(name, out var member) && member.ValueKind == JsonValueKind.String ? member.GetString() : null;
}
