namespace SwingStudy.Statistics.Group;

/// <summary>A fitted mixed model, or the reason why the data do not support one.</summary>
/// <param name="Fit">The fit; null when undefined.</param>
/// <param name="Undefined">Why there is none, as a sentence for people; null when there is one.</param>
public sealed record MixedModelOutcome(MixedModelFit? Fit, string? Undefined)
{
    internal static MixedModelOutcome NotDefined(string reason) => new(null, reason);
}
