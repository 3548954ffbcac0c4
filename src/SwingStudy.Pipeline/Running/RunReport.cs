namespace SwingStudy.Pipeline.Running;

/// <summary>What a run did.</summary>
/// <param name="RunId">Identifier of the run, as in table logs and registry.</param>
/// <param name="Stages">Stage by stage.</param>
public sealed record RunReport(string RunId, IReadOnlyList<StageReport> Stages)
{
    /// <summary>Whether anything had to be done.</summary>
    public bool DidAnything => Stages.Any(stage => stage.Done.Count + stage.Removed.Count > 0);
}
