using System.Text.Json.Nodes;
using SwingStudy.Domain.People;
using SwingStudy.Storage.Registry;

namespace SwingStudy.Pipeline.Running;

/// <summary>Sessions as stages see them: with the hand after which the player's swing is named, where the registry knows it and the session does not say.</summary>
internal static class PlayedSessions
{
    /// <summary>All sessions of a study.</summary>
    public static IReadOnlyList<SessionRecord> Of(StudyRegistry registry)
    {
        var sessions = registry.Sessions();
        var hands = sessions.Select(session => session.Participant).Distinct().ToDictionary(player => player, player => registry.Facts(player).Values.GetValueOrDefault(PersonFacts.HandVariable));
        return [.. sessions.Select(session => hands[session.Participant] is { } hand ? WithHand(session, hand) : session)];
    }

    private static SessionRecord WithHand(SessionRecord session, string hand)
    {
        var variables = JsonNode.Parse(session.Variables)!.AsObject();
        if (variables.ContainsKey(PersonFacts.HandVariable))
            return session;
        variables[PersonFacts.HandVariable] = hand;
        return session with { Variables = variables.ToJsonString() };
    }
}
