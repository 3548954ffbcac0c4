using SwingStudy.Domain.Studies;

namespace SwingStudy.Pipeline.Analyse;

/// <summary>What the effects stage may know of the declarations.</summary>
/// <param name="Outcomes">Outcomes in the protocol's order.</param>
/// <param name="Contrasts">Contrasts in the protocol's order.</param>
/// <param name="Measures">Effect measures that are planned.</param>
/// <param name="Confidence">Confidence level as a share.</param>
/// <param name="Standardizer">Denominator of the standardized difference: pooled or baseline.</param>
internal sealed record EffectSettings(
    IReadOnlyList<OutcomeSetting> Outcomes, IReadOnlyList<ContrastSetting> Contrasts, IReadOnlyList<string> Measures, double Confidence, string Standardizer)
{
    public static EffectSettings Of(StudySetup setup) => new(
        OutcomeSetting.Of(setup), ContrastSetting.Of(setup), setup.Protocol.Analysis.Measures, setup.Protocol.Analysis.Confidence, setup.Protocol.Analysis.Standardizer);
}
