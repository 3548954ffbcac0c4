using SwingStudy.Domain.Studies;
using SwingStudy.Domain.Tables;
using SwingStudy.Pipeline.Running;
using SwingStudy.Statistics.Chance;

namespace SwingStudy.Pipeline.Analyse.Curves;

/// <summary>Averages and compares each player's whole curves of the channels that the protocol names.</summary>
internal sealed class CurveStage : Stage<CurveSettings>
{
    public override StageDeclaration Declaration { get; } = new()
    {
        Name = "curves",
        Title = "Curves",
        Summary = "Averages each player's curves phase by phase with bands, and tests over the whole curve where in the swing two phases differ.",
        Unit = UnitOfWork.Participant,
        Inputs = [new("swings", Slice.SameParticipant), new("swing_events", Slice.SameParticipant), new("swing_curves", Slice.SameParticipant)],
        Outputs = ["curve_means", "curve_tests"],
        CodeVersion = "3",
    };

    protected override CurveSettings SettingsOf(StudySetup setup) => CurveSettings.Of(setup);

    protected override IReadOnlyList<string>? ColumnsOf(string table, CurveSettings settings) => table switch
    {
        "swings" => CountedSwings.Columns,
        // Curves are long: without a channel to compare none of them is read.
        "swing_events" or "swing_curves" when settings.Channels.Count == 0 => ["swing_id"],
        "swing_events" => SwingMoments.Columns,
        "swing_curves" => ChannelCurves.Columns,
        _ => null,
    };

    protected override IReadOnlyList<RowSet> Run(CurveSettings settings, StageInput input)
    {
        var (swings, events, recorded) = (new CountedSwings(input.Rows("swings"), RowSet.Empty(StudyTables.Flags)).Rows, input.Rows("swing_events"), input.Rows("swing_curves"));
        var moments = settings.Channels.Count == 0 ? new Dictionary<string, SwingMoments>() : SwingMoments.Of(events);
        var (means, tests) = (new RowSetBuilder(input.Output("curve_means")), new RowSetBuilder(input.Output("curve_tests")));
        var chance = new Xoshiro256(settings.Seed).Split("curves").Split(input.Participant!);
        foreach (var setting in settings.Channels)
        {
            var own = chance.Split(setting.Channel);
            var curves = ChannelCurves.Of(setting.Channel, swings, recorded, moments);
            foreach (var phase in settings.Phases)
                PhaseBand.Add(means, input.Participant!, setting.Channel, phase, curves, settings, own.Split("mean").Split(phase));
            foreach (var contrast in setting.Contrasts)
                PhaseComparison.Add(tests, input.Participant!, setting.Channel, contrast, curves, settings, own.Split("test").Split(contrast.Name));
        }

        return [means.Build(), tests.Build()];
    }
}
