using SwingStudy.Domain.Protocols;
using SwingStudy.Domain.Studies;

namespace SwingStudy.Pipeline.Analyse;

/// <summary>What the reliability stage may know of the declarations.</summary>
/// <param name="Outcomes">Outcomes in the protocol's order.</param>
/// <param name="BaselinePhases">Phases before anything is changed.</param>
/// <param name="Confidence">Confidence level as a share.</param>
internal sealed record ReliabilitySettings(IReadOnlyList<OutcomeSetting> Outcomes, IReadOnlyList<string> BaselinePhases, double Confidence)
{
    public static ReliabilitySettings Of(StudySetup setup) => new(
        OutcomeSetting.Of(setup),
        [.. setup.Protocol.Phases.Where(phase => phase.Role == PhaseRole.Baseline).Select(phase => phase.Name)],
        setup.Protocol.Analysis.Confidence);
}
