using SwingStudy.Statistics.Results;

namespace SwingStudy.Pipeline.Analyse.Randomization;

/// <summary>What the test of a draw gave.</summary>
/// <param name="Test">Mean with minus without the intervention, and its p; undefined, with its reason, where the draw cannot test the sessions.</param>
/// <param name="SmallestP">The smallest p that any data could have given; undefined where the test is.</param>
internal sealed record DrawTested(Estimate Test, Estimate SmallestP)
{
    private const string SmallestMethod = "one-over-the-assignments";

    /// <summary>A test that cannot be made.</summary>
    public static DrawTested Not(string method, string reason) => new(Estimate.NotDefined(method, reason), Estimate.NotDefined(SmallestMethod, reason));

    /// <summary>A test that was made.</summary>
    public static DrawTested Of(Estimate test, double smallestP) => new(test, Estimate.Of(SmallestMethod, smallestP));
}
