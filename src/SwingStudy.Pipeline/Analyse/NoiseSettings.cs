using SwingStudy.Domain.Studies;

namespace SwingStudy.Pipeline.Analyse;

/// <summary>What the noise stage may know of the declarations.</summary>
/// <param name="Outcomes">Outcomes with numbers.</param>
internal sealed record NoiseSettings(IReadOnlyList<string> Outcomes)
{
    public static NoiseSettings Of(StudySetup setup) => new([.. OutcomeSetting.Columns(OutcomeSetting.Of(setup))]);
}
