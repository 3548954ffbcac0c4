using SwingStudy.Domain.Protocols;
using SwingStudy.Domain.Studies;

namespace SwingStudy.Pipeline.Analyse;

/// <summary>A comparison of two phases.</summary>
/// <param name="Name">The word in the <c>contrast</c> column.</param>
/// <param name="From">Phase before.</param>
/// <param name="To">Phase after.</param>
/// <param name="IsWithCue">Whether it sets the intervention against a baseline: what a draw of chance is about.</param>
/// <param name="ShareOf">The contrast of the same start with the intervention, of whose change a later phase may keep a share; null for others.</param>
internal sealed record ContrastSetting(string Name, string From, string To, bool IsWithCue = false, string? ShareOf = null)
{
    /// <summary>The contrasts of the protocol.</summary>
    public static IReadOnlyList<ContrastSetting> Of(StudySetup setup) =>
        [.. setup.Protocol.Contrasts.Select(contrast => new ContrastSetting(contrast.Name, contrast.From, contrast.To, IsIntervention(setup.Protocol, contrast), WithCue(setup.Protocol, contrast)))];

    private static string? WithCue(Protocol protocol, Contrast later) => RoleOf(protocol, later.To) is PhaseRole.FollowUp or PhaseRole.Transfer
        ? protocol.Contrasts.FirstOrDefault(contrast => contrast.From == later.From && IsIntervention(protocol, contrast))?.Name
        : null;

    private static bool IsIntervention(Protocol protocol, Contrast contrast) =>
        RoleOf(protocol, contrast.From) == PhaseRole.Baseline && RoleOf(protocol, contrast.To) == PhaseRole.Intervention;

    private static PhaseRole? RoleOf(Protocol protocol, string phase) => protocol.Phase(phase)?.Role;
}
