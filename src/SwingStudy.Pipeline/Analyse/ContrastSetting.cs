using SwingStudy.Domain.Studies;

namespace SwingStudy.Pipeline.Analyse;

/// <summary>A comparison of two phases.</summary>
/// <param name="Name">The word in the <c>contrast</c> column.</param>
/// <param name="From">Phase before.</param>
/// <param name="To">Phase after.</param>
internal sealed record ContrastSetting(string Name, string From, string To)
{
    /// <summary>The contrasts of the protocol.</summary>
    public static IReadOnlyList<ContrastSetting> Of(StudySetup setup) =>
        [.. setup.Protocol.Contrasts.Select(contrast => new ContrastSetting(contrast.Name, contrast.From, contrast.To))];
}
