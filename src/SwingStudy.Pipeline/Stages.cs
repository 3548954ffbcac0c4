using SwingStudy.Pipeline.Running;

namespace SwingStudy.Pipeline;

/// <summary>The stages of a study.</summary>
public static class Stages
{
    /// <summary>All, in the order in which they run: each comes after those whose tables it reads.</summary>
    public static IReadOnlyList<Stage> All { get; } =
    [
        new Link.LinkStage(),
        new Measure.MeasureStage(),
        new Screen.ScreenStage(),
        new Analyse.NoiseStage(),
        new Analyse.EffectStage(),
        new Analyse.Trends.TrendStage(),
        new Analyse.Curves.CurveStage(),
        new Analyse.ReliabilityStage(),
        new Analyse.AgreementStage(),
        new Analyse.Findings.FindingStage(),
    ];
}
