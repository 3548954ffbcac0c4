using SwingStudy.Domain.Studies;

namespace SwingStudy.Pipeline.Analyse.Curves;

/// <summary>What the curves stage may know of the declarations.</summary>
/// <param name="Channels">Channels to compare, in the protocol's order.</param>
/// <param name="Phases">Phases in the protocol's order.</param>
/// <param name="Confidence">Confidence level as a share.</param>
/// <param name="Resamples">Relabellings and resamples.</param>
/// <param name="Seed">Seed of all chance in the study.</param>
internal sealed record CurveSettings(IReadOnlyList<CurveSetting> Channels, IReadOnlyList<string> Phases, double Confidence, int Resamples, ulong Seed)
{
    public static CurveSettings Of(StudySetup setup)
    {
        var contrasts = ContrastSetting.Of(setup);
        return new(
            [.. setup.Protocol.Curves.Select(curve => new CurveSetting(
                curve.Channel, [.. contrasts.Where(contrast => curve.Contrasts.Count == 0 || curve.Contrasts.Contains(contrast.Name))]))],
            [.. setup.Protocol.Phases.Select(phase => phase.Name)],
            setup.Protocol.Analysis.Confidence,
            setup.Protocol.Analysis.Resamples,
            setup.Protocol.Analysis.Seed);
    }
}
