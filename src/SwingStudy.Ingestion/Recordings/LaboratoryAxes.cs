using SwingStudy.Domain.Curves;
using SwingStudy.Domain.Sources;

namespace SwingStudy.Ingestion.Recordings;

/// <summary>Turns curves in the axes of a device into curves in the axes of the laboratory, with lead and trail, and loads into reactions.</summary>
/// <param name="rule">Axes and loads.</param>
/// <param name="plates">Turns of plates, by side as the mapping names it.</param>
internal sealed class LaboratoryAxes(RecordingRule rule, IReadOnlyDictionary<string, PlateGeometry> plates)
{
    private const string Letters = "xyz";
    private static readonly Dictionary<string, int> Order = Channels.Names.Select((name, position) => (name, position)).ToDictionary(pair => pair.name, pair => pair.position, StringComparer.Ordinal);

    /// <summary>The curves, in the order of the channels. The arrays of <paramref name="device"/> are handed over.</summary>
    /// <param name="device">Curves by channel with the device's axis letter; the three of a vector have the same rate and length.</param>
    /// <param name="isRightHanded">Whether the player swings right-handed; matters where names say left and right.</param>
    public IReadOnlyList<RecordedCurve> Turned(IReadOnlyList<RecordedCurve> device, bool isRightHanded)
    {
        var byName = device.ToDictionary(curve => curve.Channel, StringComparer.Ordinal);
        var turned = new List<RecordedCurve>();
        foreach (var stem in byName.Keys.Select(StemOf).Distinct(StringComparer.Ordinal))
        {
            if (byName.TryGetValue(stem, out var scalar))
                turned.Add(scalar with { Channel = PlayerSides.Of(stem, isRightHanded) });
            else
                turned.AddRange(Vector(stem, byName, PlayerSides.Of(stem, isRightHanded)));
        }

        return [.. PressurePlaces.AsMoments(turned, plate => OriginOf(plate, isRightHanded)).OrderBy(curve => Order[curve.Channel])];
    }

    /// <summary>Where a plate's origin lies from the middle of its top: to the target, down and to the right.</summary>
    private (double X, double Depth, double Z) OriginOf(string plate, bool isRightHanded)
    {
        if (plates.FirstOrDefault(pair => PlayerSides.Of(pair.Key, isRightHanded) == plate).Value is not { } declared)
            return (0, 0, 0);
        var (x, z) = Turned(declared.OriginXM, declared.OriginZM, declared.TurnDeg);
        return (x, declared.DepthM, z);
    }

    private static (double X, double Z) Turned(double x, double z, double degrees)
    {
        var (sine, cosine) = Math.SinCos(degrees * Math.PI / 180);
        return ((cosine * x) + (sine * z), (cosine * z) - (sine * x));
    }

    /// <summary>The name without its axis letter; a name without one as it is.</summary>
    private static string StemOf(string channel) => channel.Length > 2 && channel[^2] == '_' && Letters.Contains(channel[^1], StringComparison.Ordinal) ? channel[..^2] : channel;

    private List<RecordedCurve> Vector(string stem, Dictionary<string, RecordedCurve> byName, string name)
    {
        var (isLoad, isMoment) = (stem.EndsWith("_force", StringComparison.Ordinal) || stem.EndsWith("_moment", StringComparison.Ordinal), stem.EndsWith("_moment", StringComparison.Ordinal));
        var common = (isLoad && rule.Loads == LoadDirection.OnPlate ? -1 : 1) * (isMoment ? rule.Axes.Handedness : 1);
        var curves = new List<RecordedCurve>(3);
        for (var axis = 0; axis < 3; axis++)
        {
            if (!byName.TryGetValue($"{stem}_{Letters[rule.Axes.SourceOf(axis)]}", out var source))
                continue;
            if (common * rule.Axes.SignOf(axis) < 0)
                Negate(source.Values);
            curves.Add(source with { Channel = $"{name}_{Letters[axis]}" });
        }

        if ((isLoad || stem.EndsWith("_cop", StringComparison.Ordinal)) && plates.TryGetValue(stem[..stem.IndexOf('_', StringComparison.Ordinal)], out var plate) && plate.TurnDeg != 0)
            TurnAboutVertical(curves, name, plate.TurnDeg);
        return curves;
    }

    /// <summary>Adding zero also makes a plain zero of a negative one.</summary>
    private static void Negate(double[] values)
    {
        for (var i = 0; i < values.Length; i++)
            values[i] = 0 - values[i];
    }

    /// <summary>Components along plate axes that are turned by an angle about up become components along the laboratory's.</summary>
    private static void TurnAboutVertical(List<RecordedCurve> curves, string name, double degrees)
    {
        if (curves.Find(curve => curve.Channel == name + "_x") is not { } along || curves.Find(curve => curve.Channel == name + "_z") is not { } across)
            return;
        for (var i = 0; i < along.Values.Length; i++)
            (along.Values[i], across.Values[i]) = Turned(along.Values[i], across.Values[i], degrees);
    }
}
