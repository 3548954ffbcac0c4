using System.Globalization;

namespace SwingStudy.Pipeline.Measure.Recordings;

/// <summary>How a device's triggers lie against the contacts that another device saw, over the swings of a session.</summary>
/// <remarks>
/// A single trigger wavers by milliseconds and is late now and then; the middle of a session's differences does neither. Differences are fitted by a
/// robust line (median of the slopes between all pairs, median of what is left: Theil 1950, Sen 1968) where there are enough swings to know a drift, else
/// by their median; then by least squares through those that lie near it.
/// </remarks>
/// <param name="OffsetMillis">Device time less contact time at <paramref name="OriginMillis"/>.</param>
/// <param name="Drift">Change of the offset over elapsed time.</param>
/// <param name="OriginMillis">Where the offset holds.</param>
/// <param name="ScatterMillis">Median size of what is left.</param>
/// <param name="Swings">Swings it rests on.</param>
internal sealed record ContactClock(double OffsetMillis, double Drift, double OriginMillis, double ScatterMillis, int Swings)
{
    private const int LeastSwings = 3;
    private const int SwingsForDrift = 6;
    private const double MostScatterMillis = 10;

    /// <summary>Middle residuals beyond which a trigger is no ordinary one: about 3.5 standard deviations of normal scatter.</summary>
    private const double OrdinaryScatters = 5.2;

    /// <summary>The clock of a device against contacts; null with too few swings or where triggers scatter more than a hundredth of a second.</summary>
    /// <param name="pairs">For each common swing, contact on the other device's clock and trigger on this device's, in milliseconds.</param>
    public static ContactClock? Of(IReadOnlyList<(double ContactMillis, double TriggerMillis)> pairs)
    {
        if (pairs.Count < LeastSwings)
            return null;
        var origin = pairs.Min(pair => pair.ContactMillis);
        var hasDrift = pairs.Count >= SwingsForDrift;
        var slope = hasDrift ? Median([.. Slopes(pairs)]) : 0;
        var offset = Median([.. pairs.Select(pair => Left(pair, origin, slope))]);
        var scatter = Median([.. pairs.Select(pair => Math.Abs(Left(pair, origin, slope) - offset))]);
        if (scatter > MostScatterMillis)
            return null;

        // The robust line tells which triggers are ordinary; through those the least-squares line scatters less.
        var ordinary = pairs.Where(pair => Math.Abs(Left(pair, origin, slope) - offset) <= Math.Max(1, OrdinaryScatters * scatter)).ToList();
        var elapsed = ordinary.Average(pair => pair.ContactMillis - origin);
        var late = ordinary.Average(pair => Left(pair, origin, 0));
        var spread = ordinary.Sum(pair => Math.Pow(pair.ContactMillis - origin - elapsed, 2));
        slope = hasDrift && spread > 0 ? ordinary.Sum(pair => (pair.ContactMillis - origin - elapsed) * (Left(pair, origin, 0) - late)) / spread : 0;
        return new ContactClock(late - (slope * elapsed), slope, origin, scatter, ordinary.Count);
    }

    /// <summary>A contact on the device's clock, in milliseconds.</summary>
    public double Map(double contactMillis) => contactMillis + OffsetMillis + (Drift * (contactMillis - OriginMillis));

    /// <summary>For the method of impact.</summary>
    public string Describe(string source) => string.Create(CultureInfo.InvariantCulture,
        $"contact of {source} on this device's clock, from {Swings} swings, middle residual {ScatterMillis:0.0} ms");

    private static double Left((double ContactMillis, double TriggerMillis) pair, double origin, double slope) =>
        pair.TriggerMillis - pair.ContactMillis - (slope * (pair.ContactMillis - origin));

    private static IEnumerable<double> Slopes(IReadOnlyList<(double ContactMillis, double TriggerMillis)> pairs)
    {
        for (var i = 0; i < pairs.Count; i++)
        {
            for (var j = i + 1; j < pairs.Count; j++)
            {
                var elapsed = pairs[j].ContactMillis - pairs[i].ContactMillis;
                if (elapsed != 0)
                    yield return (Left(pairs[j], 0, 0) - Left(pairs[i], 0, 0)) / elapsed;
            }
        }
    }

    private static double Median(double[] values)
    {
        Array.Sort(values);
        var middle = values.Length / 2;
        return values.Length == 0 ? 0 : values.Length % 2 == 1 ? values[middle] : (values[middle - 1] + values[middle]) / 2;
    }
}
