using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.People;
using SwingStudy.Domain.Sources;
using SwingStudy.Ingestion.Intake;
using SwingStudy.Ingestion.Tests.Support;

namespace SwingStudy.Ingestion.Tests.Intake;

/// <summary>Directions that a device counts to the right whoever swings.</summary>
public sealed class MirroredColumnTests
{
    private const string Text = "Player;When;No;Path\nAda;01.05.2026 10:00:00;1;2,5\nBo;01.05.2026 10:01:00;2;2,5\nBo;01.05.2026 10:02:00;3;0\n";

    private static readonly SourceMapping Mapping = Some.Mapping with
    {
        Values = new Dictionary<string, FieldSource> { ["attack_angle"] = new() { Column = "Path", Unit = "deg", Mirror = true } },
    };

    [Fact]
    public void TheSignTurnsForLeftHandedPlayersAloneAndTheSameFileAgainChangesNothing()
    {
        using var study = new TestStudy(Mapping).With("P01", "Ada").With("P02", "Bo");
        Swings(study, "P01", "right");
        Swings(study, "P02", "left");
        study.Drop("bay/a.csv", Text);
        Assert.Equal(FileOutcome.Taken, study.RunOne().Outcome);
        Assert.Equal(["P01|2.5", "P02|-2.5", "P02|0"], study.Captures("participant", "attack_angle"));

        study.Drop("bay/b.csv", Text + "Bo;01.05.2026 10:03:00;4;1\n");
        var again = study.RunOne();
        Assert.Equal((FileOutcome.Taken, 0), (again.Outcome, again.Revisions.Count));
        Assert.Equal(["P01|2.5", "P02|-2.5", "P02|0", "P02|-1"], study.Captures("participant", "attack_angle"));
    }

    [Fact]
    public void AFileWithAPlayerOfUnknownHandIsHeld()
    {
        using var study = new TestStudy(Mapping).With("P01", "Ada").With("P02", "Bo");
        study.Drop("bay/a.csv", Text);
        var held = study.RunOne();
        Assert.Equal(FileOutcome.Held, held.Outcome);
        Assert.Equal(["handedness-unknown", "handedness-unknown"], held.Problems.Select(problem => problem.Code));
        Assert.Empty(study.Captures("participant"));
    }

    private static void Swings(TestStudy study, string code, string hand) => study.Registry.Act("test", "people.edit", act =>
    {
        act.Save(new PersonFacts(new ParticipantId(code), new Dictionary<string, string> { ["handedness"] = hand }));
        return "{}";
    });
}
