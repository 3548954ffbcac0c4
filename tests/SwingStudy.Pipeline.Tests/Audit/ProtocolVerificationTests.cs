using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Protocols;
using SwingStudy.Pipeline.Audit;
using SwingStudy.Pipeline.Draws;
using SwingStudy.Pipeline.Tests.Support;
using SwingStudy.Storage.Registry;

namespace SwingStudy.Pipeline.Tests.Audit;

public sealed class ProtocolVerificationTests : IDisposable
{
    private static readonly Protocol Drawn = Some.Protocol with { Randomization = new(Randomization.PhaseStart, 3, 12, 4) };
    private readonly TestStudy _study = new(Drawn);

    public void Dispose() => _study.Dispose();

    [Fact]
    public void WhatWasLockedAndDrawnHolds()
    {
        Store("text", Sha256.Of("text").ToString(), draw => draw);

        var check = Run();
        Assert.True(check.Passed, string.Join('\n', check.Problems));
        Assert.Equal(2, check.Examined);
    }

    [Fact]
    public void ATextWithAnotherHashThanTheLedgersIsFound()
    {
        Store("text", Sha256.Of("another text").ToString(), draw => draw);

        Assert.Equal(["protocol-tampered"], Run().Problems.Select(problem => problem.Code));
    }

    [Fact]
    public void AnAssignmentThatTheSeedDoesNotGiveIsFound()
    {
        Store("text", Sha256.Of("text").ToString(), draw => draw with { Players = [.. draw.Players.Select(player => player with { Assignment = player.Set.Listed!.First(other => other != player.Assignment) })] });

        Assert.Equal(["draw-tampered"], Run().Problems.Select(problem => problem.Code));
    }

    [Fact]
    public void AVersionThatTheLedgerDoesNotKnowIsFound()
    {
        _study.Registry.Act("coach", "other", act =>
        {
            act.Add(Version("text"));
            return "{}";
        });

        Assert.Contains("protocol-tampered", Run().Problems.Select(problem => problem.Code));
    }

    private AuditCheck Run() => new ProtocolVerification(_study.Setup with { History = _study.Registry.Protocol.History() }, _study.Registry).Run();

    private void Store(string text, string hashInLedger, Func<Draw, Draw> change)
    {
        _study.Registry.Act("coach", "protocol.lock", act =>
        {
            act.Save(new Participant(new ParticipantId("P01"), "enrolled", Some.Morning));
            act.Add(Version(text));
            return $$"""{"hash":"{{hashInLedger}}"}""";
        });
        _study.Registry.Act("coach", "protocol.schedule", act =>
        {
            act.Add(change(RandomDraw.Make(Drawn, DrawPlan.Of(Drawn)!, ["P01"], new DrawRecord(1, 1, Some.Morning, "coach"))));
            return "{}";
        });
    }

    private static ProtocolVersion Version(string text) =>
        new() { Number = 1, Hash = Sha256.Of(text), Version = "1.0.0", Text = text, At = Some.Morning, Actor = "coach" };
}
