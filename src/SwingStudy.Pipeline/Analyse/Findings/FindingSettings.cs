using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Studies;
using SwingStudy.Domain.Tables;

namespace SwingStudy.Pipeline.Analyse.Findings;

/// <summary>What the findings stage may know of the declarations.</summary>
/// <param name="Outcomes">Outcomes in the protocol's order.</param>
/// <param name="Contrasts">Contrasts in the protocol's order.</param>
/// <param name="Phases">Phases in their order.</param>
/// <param name="Conditions">Variables that must stay the same over compared phases.</param>
/// <param name="Confidence">Confidence level as a share.</param>
/// <param name="IsRandomized">Whether chance decided when or in which order the cue came.</param>
internal sealed record FindingSettings(
    IReadOnlyList<OutcomeSetting> Outcomes,
    IReadOnlyList<ContrastSetting> Contrasts,
    IReadOnlyList<PhaseSetting> Phases,
    IReadOnlyList<string> Conditions,
    double Confidence,
    bool IsRandomized)
{
    public static FindingSettings Of(StudySetup setup)
    {
        var texts = StudyTables.Swings(setup.Dictionary).Columns.Where(column => column.Kind == ColumnKind.Text).Select(column => column.Name).ToHashSet(StringComparer.Ordinal);
        return new FindingSettings(
            OutcomeSetting.Of(setup),
            ContrastSetting.Of(setup),
            [.. setup.Protocol.Phases.Select(phase => new PhaseSetting(phase.Name, Word.Of(phase.Role), phase.MinimumSessions, phase.MinimumSwings))],
            [.. setup.Protocol.FixedConditions.Where(texts.Contains)],
            setup.Protocol.Analysis.Confidence,
            setup.Protocol.Randomization is not null);
    }

    /// <summary>The phase of that name.</summary>
    public PhaseSetting Phase(string name) => Phases.First(phase => phase.Name == name);
}
