using SwingStudy.Domain.Studies;
using SwingStudy.Domain.Tables;
using SwingStudy.Pipeline.Running;
using SwingStudy.Storage.Registry;

namespace SwingStudy.Pipeline.Measure;

/// <summary>Gives each swing its values.</summary>
/// <remarks>A value that a device delivered is kept; a derived variable is computed only where none was. Practice swings keep their values.</remarks>
internal sealed class MeasureStage : Stage<MeasureSettings>
{
    public override StageDeclaration Declaration { get; } = new()
    {
        Name = "measure",
        Title = "Measure",
        Summary = "Gives each swing its conditions and values, by preferred source, and computes derived variables that no device delivered.",
        Unit = UnitOfWork.Session,
        Inputs = [new("captures", Slice.SameTime), new("links", Slice.SameUnit)],
        Outputs = ["measures"],
        SeesSession = true,
        CodeVersion = "2",
    };

    protected override MeasureSettings SettingsOf(StudySetup setup) => MeasureSettings.Of(setup);

    protected override IReadOnlyList<RowSet> Run(MeasureSettings settings, StageInput input)
    {
        var (captures, links, table) = (input.Rows("captures"), input.Rows("links"), input.Output("measures"));
        return input.Session is { } session ? [Measure(captures, links, session, settings, table)] : [];
    }

    private static RowSet Measure(RowSet captures, RowSet links, SessionRecord session, MeasureSettings settings, TableDefinition table)
    {
        var swings = SwingAssembly.Of(captures, links, settings.PreferredSources);
        var practice = (BooleanColumn)captures["is_practice"];
        var forSession = new SessionValues(session);
        var columns = table.Columns.Select(column => column.Name switch
        {
            "swing_id" => new TextColumn([.. swings.Select(swing => swing.Id)]),
            "participant" => Same(session.Participant.ToString()),
            "session" => Same(session.Id),
            "phase" => Same(session.Phase),
            "sequence" => new IntegerColumn([.. swings.Select((_, i) => (long?)i + 1)]),
            "struck_at" => new InstantColumn([.. swings.Select(swing => swing.StruckMillis)]),
            "is_practice" => new BooleanColumn([.. swings.Select(swing => (bool?)IsPractice(swing))]),
            _ => SwingValues.Of(captures[column.Name], captures, swings, forSession.Column(column, swings.Count)),
        }).ToList();
        DerivedValues.Fill(table, columns);
        return new RowSet(table, columns);

        TextColumn Same(string? text) => new([.. Enumerable.Repeat(text, swings.Count)]);

        // The source that gives the swings knows best whether a ball was struck; others are asked only where it does not say.
        bool IsPractice(MeasuredSwing swing) =>
            (swing.Skeleton is { } row ? practice.Values[row] : null) ?? swing.Single.Select(other => practice.Values[other]).FirstOrDefault(value => value is not null) ?? false;
    }
}
