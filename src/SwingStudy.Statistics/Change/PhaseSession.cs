namespace SwingStudy.Statistics.Change;

/// <summary>One session of a player's series.</summary>
/// <param name="Position">Its place among all sessions of the series, from 0; sessions of phases between the compared ones count.</param>
/// <param name="Phase">0 for the phase before, 1 for the phase after, any other number for another phase.</param>
/// <param name="Swings">Its swings in time order, all finite, at least one.</param>
public sealed record PhaseSession(int Position, int Phase, double[] Swings);
