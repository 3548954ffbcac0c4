using SwingStudy.Domain.Studies;

namespace SwingStudy.Pipeline.Analyse.Randomization;

/// <summary>What the analysis knows of one draw of chance: the set it chose from, whole, and what it chose.</summary>
/// <param name="Kind">A word of <see cref="Domain.Protocols.Randomization.Kinds"/>.</param>
/// <param name="IsJoint">Whether the players were drawn together and belong into one test.</param>
/// <param name="OrderDrawn">Whether it was drawn which player has which window.</param>
/// <param name="Windows">Admissible numbers of sessions before the intervention, one set a tier of a joint draw.</param>
/// <param name="Players">The players.</param>
internal sealed record DrawSetting(string Kind, bool IsJoint, bool OrderDrawn, IReadOnlyList<IReadOnlyList<int>> Windows, IReadOnlyList<DrawnSetting> Players)
{
    /// <summary>The draws that hold: of each player the last.</summary>
    public static IReadOnlyList<DrawSetting> Of(StudySetup setup) =>
    [
        .. setup.Schedule.Draws.Select(draw => new DrawSetting(
            draw.Kind,
            draw.IsJoint,
            draw.OrderDrawn,
            draw.Windows,
            [
                .. draw.Players.Where(player => ReferenceEquals(setup.Schedule.DrawOf(player.Participant), draw)).Select(player => new DrawnSetting(
                    player.Participant, player.Assignment, player.Set.Starts, player.Set.Phases, player.Set.Least, player.Set.WithIntervention, player.Set.LongestRun, player.Tier)),
            ])).Where(draw => draw.Players.Count > 0),
    ];
}
