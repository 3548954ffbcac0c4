using SwingStudy.Domain.Studies;
using SwingStudy.Domain.Tables;
using SwingStudy.Pipeline.Running;
using SwingStudy.Statistics.Change;

namespace SwingStudy.Pipeline.Analyse;

/// <summary>Measures each player's scatter, from which the study's pooled noise is summed.</summary>
internal sealed class NoiseStage : Stage<NoiseSettings>
{
    public override StageDeclaration Declaration { get; } = new()
    {
        Name = "noise",
        Title = "Noise",
        Summary = "Measures how much each player's outcomes scatter from session to session and from swing to swing within phases.",
        Unit = UnitOfWork.Participant,
        Inputs = [new("swings", Slice.SameParticipant), new("flags", Slice.SameParticipant)],
        Outputs = ["noise"],
        CodeVersion = "1",
    };

    protected override NoiseSettings SettingsOf(StudySetup setup) => NoiseSettings.Of(setup);

    protected override IReadOnlyList<string> ColumnsOf(string table, NoiseSettings settings) =>
        table == "flags" ? ExcludedValues.Columns : [.. CountedSwings.Columns, .. settings.Outcomes];

    protected override IReadOnlyList<RowSet> Run(NoiseSettings settings, StageInput input)
    {
        var swings = new CountedSwings(input.Rows("swings"), input.Rows("flags"));
        var rows = new RowSetBuilder(input.Output("noise"));
        foreach (var outcome in settings.Outcomes)
        {
            var noise = swings.Values(outcome)
                .GroupBy(value => value.Phase, StringComparer.Ordinal).OrderBy(phase => phase.Key, StringComparer.Ordinal)
                .Aggregate(NoiseSums.None, (sums, phase) => sums + NoiseSums.OfPhase(SessionsOf(phase)));
            if (noise.Swings > 0)
            {
                rows.Add(("participant", input.Participant), ("outcome", outcome), ("swings", noise.Swings), ("sessions", noise.Sessions), ("phases", noise.Phases),
                    ("session_ss", noise.SessionSquares), ("swing_ss", noise.SwingSquares), ("square_counts", noise.SquareCounts));
            }
        }

        return [rows.Build()];
    }

    private static IEnumerable<double[]> SessionsOf(IEnumerable<CountedValue> phase) => phase
        .GroupBy(value => value.Session, StringComparer.Ordinal).OrderBy(session => session.Key, StringComparer.Ordinal)
        .Select(session => session.Select(value => value.Value).ToArray());
}
