namespace SwingStudy.Pipeline.Planning;

/// <summary>Power of the mean change over so many players.</summary>
/// <param name="Players">Number of players.</param>
/// <param name="Power">Share of simulated studies whose paired t test over players tells the change.</param>
public sealed record PlayersRow(int Players, double Power);
