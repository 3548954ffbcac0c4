using SwingStudy.Domain.Sources;
using SwingStudy.Ingestion.Intake;
using SwingStudy.Ingestion.Tests.Support;

namespace SwingStudy.Ingestion.Tests.Intake;

public sealed class SessionIntakeTests
{
    private const string Headings = "Date;Start;Name;Phase;Site;Mass;Planned;Note\n";

    private static readonly SourceMapping Log = Some.Mapping with
    {
        Source = "log",
        Rows = RowMeaning.Sessions,
        Participant = Some.Column("Name"),
        Sequence = null,
        Time = new TimeRule { Parts = [Some.Column("Date"), Some.Column("Start")], Format = "dd.MM.yyyy HH:mm", Zone = "Europe/Vienna" },
        Phase = Some.Column("Phase") with { Words = new Dictionary<string, string> { ["Base"] = "baseline" } },
        Values = new Dictionary<string, FieldSource>
        {
            ["site"] = Some.Column("Site"),
            ["body_mass"] = Some.Column("Mass") with { Unit = "kg" },
            ["planned_swings"] = Some.Column("Planned"),
            ["note"] = Some.Column("Note"),
        },
        NotData = [new RowRule("reminder", [new CellCondition(null, null, "^Do not forget", null)])],
    };

    [Fact]
    public void RowsOfALogBecomeSessionsWithIdentifiersByDayAndOrder()
    {
        using var study = new TestStudy(Log).With("P01", "Fern").With("P02", "Moss");
        study.Drop("log/log.csv", Headings + "07.09.2026;15:00;Fern;base;Hall;61,5;10;\n07.09.2026;10:00;Fern;Base;Hall;61,9;12;slept badly\n07.09.2026;11:00;Moss;base;Bay;;10;\nDo not forget the shoes;;;;;;;\n");
        var result = study.RunOne();
        Assert.Equal((5, 3, 0, 2), (result.Counts.Read, result.Counts.Taken, result.Counts.Rejected, result.Counts.NotDataTotal));
        Assert.Equal(
            ["P01-20260907-1 2026-09-07T08:00:00Z baseline Hall 12 {\"body_mass\":61.9} slept badly", "P01-20260907-2 2026-09-07T13:00:00Z baseline Hall 10 {\"body_mass\":61.5} ", "P02-20260907-1 2026-09-07T09:00:00Z baseline Bay 10 {} "],
            study.Registry.Sessions().Select(session => $"{session.Id} {session.StartedAt} {session.Phase} {session.Site} {session.PlannedSwings} {session.Variables} {session.Note}"));
    }

    [Fact]
    public void ALogThatComesAgainWithOneRowMendedRevisesThatSessionAlone()
    {
        using var study = new TestStudy(Log).With("P01", "Fern");
        study.Drop("log/1.csv", Headings + "07.09.2026;10:00;Fern;base;Hall;61,9;12;\n07.09.2026;15:00;Fern;base;Hall;61,5;10;\n");
        study.RunOne();
        study.Drop("log/2.csv", Headings + "07.09.2026;10:15;Fern;base;Hall;61,9;12;\n07.09.2026;15:00;Fern;base;Hall;61,5;10;\n08.09.2026;10:00;Fern;base;Hall;61,5;10;\n");
        var result = study.RunOne();
        Assert.Equal((2, 1), (result.Counts.Taken, result.Counts.NotData["repeat"]));
        var revision = Assert.Single(result.Revisions);
        Assert.Equal(("P01-20260907-1", "started_at"), (revision.Replaces, revision.Variable));
        Assert.Equal([("P01-20260907-1", 2), ("P01-20260907-2", 1), ("P01-20260908-1", 1)], study.Registry.Sessions().Select(session => (session.Id, session.Revision)));
    }

    [Fact]
    public void OneSessionUnderTwoDifferentRowsHoldsTheLog()
    {
        using var study = new TestStudy(Log).With("P01", "Fern");
        study.Drop("log/1.csv", Headings + "07.09.2026;10:00;Fern;base;Hall;61,9;12;\n07.09.2026;10:00;Fern;base;Bay;61,9;12;\n");
        var result = study.RunOne();
        Assert.Equal((FileOutcome.Held, "session-twice"), (result.Outcome, Assert.Single(result.Problems).Code));
        Assert.Empty(study.Registry.Sessions());
    }
}
