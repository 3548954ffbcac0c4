using System.Text.Json;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.People;
using SwingStudy.Pipeline.Running;
using SwingStudy.Pipeline.Tests.Support;

namespace SwingStudy.Pipeline.Tests.Running;

public sealed class PlayedSessionsTests : IDisposable
{
    private readonly TestStudy _study = new();

    public void Dispose() => _study.Dispose();

    [Fact]
    public void TheHandOfThePlayerHoldsWhereTheSessionDoesNotSayOne()
    {
        _study.Session("P01", 0, "baseline");
        var unknown = _study.Session("P02", 0, "baseline");
        Know("P01", "left");
        Assert.Equal("left", Hand(PlayedSessions.Of(_study.Registry).Single(session => session.Participant.ToString() == "P01").Variables));
        Assert.Equal(unknown.Variables, PlayedSessions.Of(_study.Registry).Single(session => session.Participant.ToString() == "P02").Variables);
    }

    [Fact]
    public void WhatTheSessionSaysStays()
    {
        var session = _study.Session("P01", 0, "baseline");
        _study.Registry.Act("tester", "session.edit", act =>
        {
            act.Save(session with { Variables = """{"handedness":"right"}""" });
            return "{}";
        });
        Know("P01", "left");
        Assert.Equal("right", Hand(Assert.Single(PlayedSessions.Of(_study.Registry)).Variables));
    }

    private static string? Hand(string variables) => JsonDocument.Parse(variables).RootElement.GetProperty("handedness").GetString();

    private void Know(string player, string hand) => _study.Registry.Act("tester", "people.edit", act =>
    {
        act.Save(new PersonFacts(new ParticipantId(player), new Dictionary<string, string> { ["handedness"] = hand }));
        return "{}";
    });
}
