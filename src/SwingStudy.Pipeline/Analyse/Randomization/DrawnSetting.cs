namespace SwingStudy.Pipeline.Analyse.Randomization;

/// <summary>What was drawn for one player, and from what.</summary>
/// <param name="Participant">The player.</param>
/// <param name="Assignment">One flag a session: <c>1</c> with the intervention.</param>
/// <param name="Starts">Admissible numbers of sessions before the intervention; empty where no start is drawn.</param>
/// <param name="Phases">Number of phases in turn whose changes are drawn; null where none are.</param>
/// <param name="Least">Fewest sessions of each of these phases.</param>
/// <param name="WithIntervention">Sessions with the intervention, of alternating conditions.</param>
/// <param name="LongestRun">Most sessions of one condition in a row, of alternating conditions.</param>
/// <param name="Tier">Window of a joint draw that the player got; null outside joint draws.</param>
internal sealed record DrawnSetting(
    string Participant, string Assignment, IReadOnlyList<int> Starts, int? Phases, int? Least, int? WithIntervention, int? LongestRun, int? Tier);
