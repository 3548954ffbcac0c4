using SwingStudy.Domain.Protocols;
using SwingStudy.Statistics.Resampling;

namespace SwingStudy.Pipeline.Draws;

/// <summary>The set that was drawn from, as the randomization test goes through it.</summary>
public static class AssignmentSchemes
{
    /// <summary>The scheme of one player's set.</summary>
    /// <exception cref="ArgumentException">The set is of no known kind, or its numbers do not fit together.</exception>
    public static AssignmentScheme Of(AssignmentSet set) => set.Kind switch
    {
        Randomization.PhaseStart or Randomization.Order or Randomization.OrderAndStart => new PhaseStartScheme(set.Sessions, set.Starts),
        Randomization.PhaseChanges => new PhaseChangeScheme(set.Sessions, set.Phases ?? 0, set.Least ?? 0),
        Randomization.Alternation => new AlternatingScheme(set.Sessions - (set.WithIntervention ?? 0), set.WithIntervention ?? 0, set.LongestRun ?? 0),
        _ => throw new ArgumentException($"'{set.Kind}' is no kind of draw.", nameof(set)),
    };

    /// <summary>The assignment as flags: true with the intervention.</summary>
    public static bool[] Flags(DrawnPlayer player) => [.. player.Assignment.Select(flag => flag == '1')];
}
