using SwingStudy.Domain.Protocols;
using SwingStudy.Statistics.Distributions;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Pipeline.Planning;

/// <summary>What one comparison can tell from noise when every phase has the fewest sessions and swings that the protocol asks for.</summary>
/// <remarks>
/// Smallest detectable change z √(v₁ + v₂) with v = (session² + swing²/swings)/sessions. Source: the smallest detectable change of a mean, as in
/// de Vet et al. (2006), Health and Quality of Life Outcomes 4:54, with sessions as a second source of error.
/// </remarks>
/// <param name="Outcome">Name of the variable.</param>
/// <param name="Contrast">Name of the contrast.</param>
/// <param name="Detectable">Smallest detectable change, canonical unit.</param>
/// <param name="Floor">The same with endless swings a session: what day-to-day scatter alone leaves.</param>
/// <param name="Worthwhile">Smallest worthwhile change, canonical unit; null where nobody could say.</param>
/// <param name="Noise">The scatter it goes by.</param>
public sealed record DetectableChange(string Outcome, string Contrast, double Detectable, double Floor, double? Worthwhile, OutcomeNoise Noise)
{
    /// <summary>Whether the plan can tell the smallest worthwhile change from noise; null where no such change is named.</summary>
    public bool? CanAnswer => Worthwhile is { } worthwhile ? Detectable <= worthwhile : null;

    /// <summary>Every planned comparison whose scatter is known.</summary>
    /// <param name="protocol">The protocol.</param>
    /// <param name="tables">The study's tables; null outside a study.</param>
    public static IReadOnlyList<DetectableChange> Of(Protocol protocol, TableStore? tables) =>
    [
        .. from comparison in PlannedComparison.Of(protocol)
           let noise = OutcomeNoise.Of(protocol.Outcomes.First(outcome => outcome.Variable == comparison.Outcome), tables)
           where noise is not null
           let phases = new[] { protocol.Phase(comparison.From)!, protocol.Phase(comparison.To)! }
           select new DetectableChange(
               comparison.Outcome, comparison.Contrast, Of(noise, phases, protocol.Analysis.Confidence), Of(noise with { Swing = 0 }, phases, protocol.Analysis.Confidence),
               comparison.Worthwhile, noise),
    ];

    private static double Of(OutcomeNoise noise, Phase[] phases, double confidence) =>
        Normal.Critical(confidence) * Math.Sqrt(phases.Sum(phase => noise.Model().VarianceOfPhaseMean(phase.MinimumSessions, phase.MinimumSwings)));
}
