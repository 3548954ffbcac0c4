using SwingStudy.Statistics.Group;

namespace SwingStudy.Pipeline.Analyse;

/// <summary>p values of one family of planned comparisons, adjusted by the method of the protocol.</summary>
internal static class AdjustedP
{
    /// <summary>Adjusts in the order given; what has no p stays without and does not count.</summary>
    /// <param name="method"><c>holm</c>, <c>hochberg</c>, <c>benjamini-hochberg</c> or <c>none</c>.</param>
    /// <param name="values">p values of the family; null where there is none.</param>
    public static double?[] Of(string method, IReadOnlyList<double?> values)
    {
        double[] known = [.. values.OfType<double>()];
        var adjusted = new Queue<double>(method switch
        {
            "holm" => Multiplicity.Holm(known),
            "hochberg" => Multiplicity.Hochberg(known),
            "benjamini-hochberg" => Multiplicity.BenjaminiHochberg(known),
            "none" => known,
            _ => throw new ArgumentOutOfRangeException(nameof(method), method, "Unknown adjustment."),
        });
        return [.. values.Select(value => value is null ? (double?)null : adjusted.Dequeue())];
    }
}
