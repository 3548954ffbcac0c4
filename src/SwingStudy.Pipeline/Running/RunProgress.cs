namespace SwingStudy.Pipeline.Running;

/// <summary>How far a run is.</summary>
/// <param name="Stage">Name of the stage.</param>
/// <param name="Done">Units finished.</param>
/// <param name="Total">Units to be done.</param>
/// <param name="Skipped">Units that are up to date.</param>
public sealed record RunProgress(string Stage, int Done, int Total, int Skipped);
