using SwingStudy.Statistics.Description;

namespace SwingStudy.Statistics.Curves;

/// <summary>Checks on curves that are compared node by node.</summary>
internal static class CurveSet
{
    /// <summary>The common number of nodes; zero without curves.</summary>
    /// <exception cref="ArgumentException">Curves differ in length, or a value is not finite.</exception>
    public static int Nodes(IReadOnlyList<double[]> curves, string parameter)
    {
        var nodes = curves.Count == 0 ? 0 : curves[0].Length;
        for (var i = 0; i < curves.Count; i++)
        {
            if (curves[i].Length != nodes)
                throw new ArgumentException($"Curve {i + 1} has {curves[i].Length} nodes, the first one {nodes}: bring them to the same time base.", parameter);
            Finite.Require(curves[i], parameter);
        }

        return nodes;
    }
}
