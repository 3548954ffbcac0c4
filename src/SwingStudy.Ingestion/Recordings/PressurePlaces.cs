using SwingStudy.Domain.Curves;

namespace SwingStudy.Ingestion.Recordings;

/// <summary>Makes moments about a plate's origin of the centre of pressure, for plates that give it in place of moments.</summary>
/// <remarks>
/// The reaction acts at the centre of pressure r = (x, depth, z) from the plate's origin, so that its moment is r × F. About up it also holds the free moment, which
/// such plates do not tell: that component stays missing. Where a plate gives no horizontal force, the moments follow from the vertical force alone when the
/// origin lies in the plate's top.
/// </remarks>
internal static class PressurePlaces
{
    private const string Stem = "_cop_";

    /// <summary>Curves in the laboratory's axes, with moments in place of centres of pressure.</summary>
    /// <param name="curves">Reactions and centres of pressure.</param>
    /// <param name="originOf">Where a plate's origin lies from the middle of its top: to the target, down and to the right, metres.</param>
    public static IReadOnlyList<RecordedCurve> AsMoments(IReadOnlyList<RecordedCurve> curves, Func<string, (double X, double Depth, double Z)> originOf)
    {
        if (!curves.Any(curve => curve.Channel.Contains(Stem, StringComparison.Ordinal)))
            return curves;
        var byName = curves.ToDictionary(curve => curve.Channel, StringComparer.Ordinal);
        var result = curves.Where(curve => !curve.Channel.Contains(Stem, StringComparison.Ordinal)).ToList();
        foreach (var plate in Channels.Plates)
        {
            if (byName.GetValueOrDefault($"{plate}{Stem}x") is not { } along || byName.GetValueOrDefault($"{plate}{Stem}z") is not { } across
                || byName.GetValueOrDefault(Channels.OfPlate(plate, "force", 'y')) is not { } vertical)
                continue;
            var (originX, depth, originZ) = originOf(plate);
            var (forceX, forceZ) = (Values(Channels.OfPlate(plate, "force", 'x')), Values(Channels.OfPlate(plate, "force", 'z')));
            Add(plate, 'x', i => (depth == 0 ? 0 : depth * At(forceZ, i)) - ((across.Values[i] - originZ) * vertical.Values[i]));
            Add(plate, 'z', i => ((along.Values[i] - originX) * vertical.Values[i]) - (depth == 0 ? 0 : depth * At(forceX, i)));

            void Add(string side, char axis, Func<int, double> moment)
            {
                var name = Channels.OfPlate(side, "moment", axis);
                if (!byName.ContainsKey(name))
                    result.Add(new RecordedCurve(name, "N.m", vertical.RateHz, [.. Enumerable.Range(0, vertical.Values.Length).Select(moment)]));
            }
        }

        return result;

        double[]? Values(string name) => byName.GetValueOrDefault(name)?.Values;

        static double At(double[]? values, int i) => values is null ? double.NaN : values[i];
    }
}
