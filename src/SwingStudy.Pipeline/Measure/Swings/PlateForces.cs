using SwingStudy.Domain.Curves;
using SwingStudy.Motion.Forces;
using SwingStudy.Motion.Geometry;
using SwingStudy.Pipeline.Measure.Recordings;

namespace SwingStudy.Pipeline.Measure.Swings;

/// <summary>The loads of plates in a recording.</summary>
internal static class PlateForces
{
    /// <summary>The loads of a plate as they stand in a recording, reactions in laboratory axes; null when that plate was not recorded.</summary>
    public static PlateLoads? Of(Recording recording, string plate)
    {
        if (Channel("force", 'y') is not { } vertical)
            return null;
        return new PlateLoads(Or("force", 'x'), vertical, Or("force", 'z'), Or("moment", 'x'), Or("moment", 'y'), Or("moment", 'z'));

        double[]? Channel(string quantity, char axis) => recording.Channels.GetValueOrDefault(Channels.OfPlate(plate, quantity, axis))?.Values;

        // A plate that measures vertical force alone gives nothing else: missing, not zero.
        double[] Or(string quantity, char axis) => Channel(quantity, axis) ?? [.. Enumerable.Repeat(double.NaN, vertical.Length)];
    }

    /// <summary>Where the origin of a plate lies according to the recording's own file; null when it does not say.</summary>
    public static Vector3D? OriginIn(Recording recording, string plate)
    {
        var origin = new Vector3D(Part('x'), Part('y'), Part('z'));
        return origin.IsMissing ? null : origin;

        double Part(char axis) => recording.Channels.GetValueOrDefault(Channels.OriginOf(plate, axis))?.Values.FirstOrDefault() ?? double.NaN;
    }
}
