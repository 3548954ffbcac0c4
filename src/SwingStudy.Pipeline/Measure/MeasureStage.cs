using System.Text.Json;
using SwingStudy.Domain.Studies;
using SwingStudy.Domain.Tables;
using SwingStudy.Pipeline.Measure.Recordings;
using SwingStudy.Pipeline.Measure.Swings;
using SwingStudy.Pipeline.Running;
using SwingStudy.Storage.Registry;

namespace SwingStudy.Pipeline.Measure;

/// <summary>Gives each swing its events, curves and values.</summary>
/// <remarks>
/// A value that a device delivered is kept; what curves give is stored beside it in <c>curve_measures</c>, with its definition or the reason why it could
/// not be computed, and stands for the variable only in sessions in which no device delivered it. A derived variable is computed only where none was read.
/// Practice swings keep their values.
/// </remarks>
internal sealed class MeasureStage : Stage<MeasureSettings>
{
    public override StageDeclaration Declaration { get; } = new()
    {
        Name = "measure",
        Title = "Measure",
        Summary = "Finds the events of each swing, processes its curves, and gives it conditions and values, by preferred source; what no device delivered is computed.",
        Unit = UnitOfWork.Session,
        Inputs =
        [
            new("captures", Slice.SameTime), new("links", Slice.SameUnit), new("clocks", Slice.SameUnit), new("curves", Slice.SameCaptures), new("capture_events", Slice.SameCaptures),
        ],
        Outputs = ["measures", "swing_events", "swing_curves", "curve_measures"],
        SeesSession = true,
        CodeVersion = "8",
    };

    protected override MeasureSettings SettingsOf(StudySetup setup) => MeasureSettings.Of(setup);

    protected override IReadOnlyList<RowSet> Run(MeasureSettings settings, StageInput input)
    {
        var (captures, links) = (input.Rows("captures"), input.Rows("links"));
        var recordings = RecordingReader.Of(captures, input.Rows("curves"), input.Rows("capture_events"));
        var (measures, events, curves, computed) = (input.Output("measures"), input.Output("swing_events"), input.Output("swing_curves"), input.Output("curve_measures"));
        if (input.Session is not { } session)
            return [];
        var swings = SwingAssembly.Of(captures, links, settings.PreferredSources);
        var ids = captures.Texts("capture_id");
        var signals = SessionSignals.Of(
            [.. swings.Select(swing => (swing.Id, (IReadOnlyList<string>)[.. swing.Single.Select(row => ids[row]!)]))], recordings, StayClock.Of(input.Rows("clocks")), SideOf(session), settings);
        var participant = session.Participant.ToString();
        var values = SignalRows.Measures(computed, participant, signals, settings.Units);
        return
        [
            Measure(captures, swings, session, values, measures), SignalRows.Events(events, participant, signals), SignalRows.Curves(curves, participant, signals), values,
        ];
    }

    /// <summary>Whether the session says that the player swings right- or left-handed.</summary>
    private static int? SideOf(SessionRecord session)
    {
        using var variables = JsonDocument.Parse(session.Variables);
        return variables.RootElement.TryGetProperty("handedness", out var hand) && hand.ValueKind == JsonValueKind.String
            ? hand.GetString() switch { "right" => 1, "left" => -1, _ => null }
            : null;
    }

    private static RowSet Measure(RowSet captures, IReadOnlyList<MeasuredSwing> swings, SessionRecord session, RowSet computed, TableDefinition table)
    {
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
        ComputedValues.Fill(table, columns, computed, [.. swings.Select(swing => swing.Id)]);
        DerivedValues.Fill(table, columns);
        return new RowSet(table, columns);

        TextColumn Same(string? text) => new([.. Enumerable.Repeat(text, swings.Count)]);

        // The source that gives the swings knows best whether a ball was struck; others are asked only where it does not say.
        bool IsPractice(MeasuredSwing swing) =>
            (swing.Skeleton is { } row ? practice.Values[row] : null) ?? swing.Single.Select(other => practice.Values[other]).FirstOrDefault(value => value is not null) ?? false;
    }
}
