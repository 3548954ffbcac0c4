using SwingStudy.Domain.Studies;

namespace SwingStudy.Pipeline.Analyse.Trends;

/// <summary>What the trends stage may know of the declarations.</summary>
/// <param name="Outcomes">Outcomes in the protocol's order.</param>
/// <param name="Contrasts">Contrasts in the protocol's order.</param>
/// <param name="Confidence">Confidence level as a share.</param>
internal sealed record TrendSettings(IReadOnlyList<OutcomeSetting> Outcomes, IReadOnlyList<ContrastSetting> Contrasts, double Confidence)
{
    public static TrendSettings Of(StudySetup setup) => new(OutcomeSetting.Of(setup), ContrastSetting.Of(setup), setup.Protocol.Analysis.Confidence);
}
