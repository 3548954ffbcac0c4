using System.Globalization;
using SwingStudy.Domain.Tables;

namespace SwingStudy.Pipeline.Measure.Recordings;

/// <summary>A device's clock against the reference of its stay, as linking found it from all swings of the stay, whoever made them.</summary>
/// <param name="FromMillis">First record, on the device's clock.</param>
/// <param name="ToMillis">Last record.</param>
/// <param name="OffsetSeconds">To add to the device's time at the first record.</param>
/// <param name="Drift">Change of the offset over elapsed time.</param>
/// <param name="Matched">Records joined to a swing.</param>
/// <param name="Reference">Source of the reference.</param>
internal sealed record StayClock(double FromMillis, double ToMillis, double OffsetSeconds, double Drift, long Matched, string Reference)
{
    /// <summary>A stretch holds as long before its first record and after its last.</summary>
    private const double BeyondMillis = 600_000;

    /// <summary>The stretches that were made, by device.</summary>
    public static ILookup<string, StayClock> Of(RowSet clocks)
    {
        var (sources, devices, references, methods) = (clocks.Texts("source"), clocks.Texts("device"), clocks.Texts("reference_source"), clocks.Texts("method"));
        var (from, to) = (clocks.Instants("from"), clocks.Instants("to"));
        var (offsets, drifts, matched) = (clocks.Numbers("offset_s"), clocks.Numbers("drift_ppm"), ((IntegerColumn)clocks["matched"]).Values);
        return Enumerable.Range(0, clocks.Count).Where(row => methods[row] != Link.ClockRow.NotMade)
            .ToLookup(row => devices[row] ?? sources[row]!, row => new StayClock(from[row], to[row], offsets[row], 1e-6 * drifts[row], matched[row] ?? 0, references[row]!), StringComparer.Ordinal);
    }

    /// <summary>A moment of another device on this device's clock, in milliseconds; null when no stretches of one reference cover it.</summary>
    /// <param name="clocks">Clocks of the session.</param>
    /// <param name="device">This device.</param>
    /// <param name="other">The other.</param>
    /// <param name="millis">The moment on the other's clock.</param>
    public static (double Millis, StayClock Clock)? Map(ILookup<string, StayClock> clocks, string device, string other, double millis)
    {
        if (clocks[other].Where(clock => millis >= clock.FromMillis - BeyondMillis && millis <= clock.ToMillis + BeyondMillis).ToList() is not [var from])
            return null;
        var reference = millis + (1000 * from.OffsetSeconds) + (from.Drift * (millis - from.FromMillis));
        List<(double Millis, StayClock Clock)> found = [.. clocks[device].Where(clock => clock.Reference == from.Reference).Select(clock => (clock.FromReference(reference), clock))
            .Where(to => to.Item1 >= to.clock.FromMillis - BeyondMillis && to.Item1 <= to.clock.ToMillis + BeyondMillis)];
        return found is [var only] ? only : null;
    }

    /// <summary>For the method of impact.</summary>
    public string Describe(string source) => string.Create(CultureInfo.InvariantCulture, $"contact of {source} on this device's clock, from the {Matched} swings of its stay");

    private double FromReference(double millis) => (millis - (1000 * OffsetSeconds) + (Drift * FromMillis)) / (1 + Drift);
}
