namespace SwingStudy.Pipeline.Analyse.Curves;

/// <summary>A channel whose curves are compared.</summary>
/// <param name="Channel">The word in the <c>channel</c> column.</param>
/// <param name="Contrasts">Contrasts in which it is compared.</param>
internal sealed record CurveSetting(string Channel, IReadOnlyList<ContrastSetting> Contrasts);
