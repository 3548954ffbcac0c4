using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Distributions;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.SingleCase;

/// <summary>How values move from swing to swing within a session: warming up, learning or fatigue.</summary>
/// <remarks>
/// The least-squares slope against the order of each session, then their mean over sessions with a t interval: sessions are the independent units, so
/// that likeness of neighbouring swings does no harm. Source of the two-step summary: Matthews et al. (1990), BMJ 300:230–235.
/// </remarks>
public static class OrderSlope
{
    /// <summary>Method word.</summary>
    public const string Method = "order-slope";

    private const int LeastSwings = 3;

    /// <summary>The mean slope.</summary>
    /// <param name="orders">Place of each value within its session, any spacing.</param>
    /// <param name="values">The values, as many.</param>
    /// <param name="sessions">Session of each value.</param>
    /// <param name="confidence">Level of the interval.</param>
    /// <returns>Unit of the values for each place; undefined without a session of three values at different places, without error with one such
    /// session.</returns>
    /// <exception cref="ArgumentException">Lengths differ, a number is not finite or the confidence is out of range.</exception>
    public static Estimate Of(ReadOnlySpan<double> orders, ReadOnlySpan<double> values, ReadOnlySpan<int> sessions, double confidence = 0.95)
    {
        Finite.RequireConfidence(confidence);
        Finite.Require(values, nameof(values));
        Finite.Require(orders, nameof(orders));
        if (orders.Length != values.Length || sessions.Length != values.Length)
            throw new ArgumentException($"Columns need equal lengths; got {orders.Length}, {values.Length} and {sessions.Length}.", nameof(values));
        var rows = new SortedDictionary<int, List<(double Order, double Value)>>();
        for (var i = 0; i < values.Length; i++)
        {
            if (!rows.TryGetValue(sessions[i], out var list))
                rows[sessions[i]] = list = [];
            list.Add((orders[i], values[i]));
        }

        double[] slopes = [.. rows.Values.Where(session => session.Count >= LeastSwings).Select(SlopeOf).OfType<double>().Where(double.IsFinite)];
        if (slopes.Length == 0)
            return Estimate.NotDefined(Method, $"needs a session with at least {LeastSwings} values in order");
        var summary = Summary.OfChecked(slopes);
        if (summary.StandardDeviation is not { } deviation)
            return Estimate.Of(Method, summary.Mean!.Value);
        var (mean, se, df) = (summary.Mean!.Value, deviation / Math.Sqrt(slopes.Length), slopes.Length - 1);
        return Estimate.Of(Method, mean, se, Limits.StudentT(mean, se, df, confidence), se > 0 ? StudentT.TwoSided(mean / se, df) : null, df);
    }

    private static double? SlopeOf(List<(double Order, double Value)> session)
    {
        var (centre, first) = (session.Average(row => row.Order), session[0].Value);
        double products = 0, squares = 0;
        foreach (var (order, value) in session)
        {
            products += (order - centre) * (value - first);
            squares += (order - centre) * (order - centre);
        }

        return squares > 0 ? products / squares : null;
    }
}
