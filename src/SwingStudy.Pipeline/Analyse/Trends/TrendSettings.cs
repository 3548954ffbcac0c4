using SwingStudy.Domain.Studies;
using SwingStudy.Pipeline.Analyse.Randomization;

namespace SwingStudy.Pipeline.Analyse.Trends;

/// <summary>What the trends stage may know of the declarations.</summary>
/// <param name="Outcomes">Outcomes in the protocol's order.</param>
/// <param name="Contrasts">Contrasts in the protocol's order.</param>
/// <param name="Phases">Phases in their order.</param>
/// <param name="Draws">Draws of chance.</param>
/// <param name="Confidence">Confidence level as a share.</param>
/// <param name="Resamples">Sample of assignments where there are too many.</param>
/// <param name="Seed">Seed of that sample.</param>
internal sealed record TrendSettings(
    IReadOnlyList<OutcomeSetting> Outcomes,
    IReadOnlyList<ContrastSetting> Contrasts,
    IReadOnlyList<PhaseSetting> Phases,
    IReadOnlyList<DrawSetting> Draws,
    double Confidence,
    int Resamples,
    ulong Seed)
{
    public static TrendSettings Of(StudySetup setup) => new(
        OutcomeSetting.Of(setup),
        ContrastSetting.Of(setup),
        PhaseSetting.Of(setup),
        DrawSetting.Of(setup),
        setup.Protocol.Analysis.Confidence,
        setup.Protocol.Analysis.Resamples,
        setup.Protocol.Analysis.Seed);
}
