using SwingStudy.Domain.Curves;
using SwingStudy.Motion.Forces;
using SwingStudy.Motion.Geometry;
using SwingStudy.Pipeline.Measure.Recordings;

namespace SwingStudy.Pipeline.Measure.Swings;

/// <summary>The loads of the plates in one recording.</summary>
/// <param name="Lead">Loads under the lead foot; null when that plate was not recorded.</param>
/// <param name="Trail">Loads under the trail foot.</param>
internal sealed record PlateForces(PlateLoads? Lead, PlateLoads? Trail)
{
    /// <summary>As they stand in a recording.</summary>
    public static PlateForces Of(Recording recording) => new(Loads(recording, "lead"), Loads(recording, "trail"));

    /// <summary>Less the zero of each plate, where it is known.</summary>
    public PlateForces Less((PlateZero? Lead, PlateZero? Trail) zero) => new(
        zero.Lead is { } lead ? Lead?.Less(lead) : Lead,
        zero.Trail is { } trail ? Trail?.Less(trail) : Trail);

    /// <summary>Zeros of a recording of empty plates.</summary>
    public (PlateZero? Lead, PlateZero? Trail) Zeros => (Lead is null ? null : PlateZero.Of(Lead), Trail is null ? null : PlateZero.Of(Trail));

    /// <summary>Summed vertical force of the plates that were recorded.</summary>
    public double[] Vertical => (Lead, Trail) switch
    {
        ({ } lead, { } trail) => [.. lead.ForceY.Zip(trail.ForceY, (a, b) => a + b)],
        ({ } one, null) => one.ForceY,
        (null, { } one) => one.ForceY,
        _ => [],
    };

    /// <summary>Where the origin of a plate lies according to the recording's own file; null when it does not say. Its height above it comes from the mapping.</summary>
    public static Vector3D? OriginIn(Recording recording, string plate)
    {
        var origin = new Vector3D(Part('x'), Part('y'), Part('z'));
        return origin.IsMissing ? null : origin;

        double Part(char axis) => recording.Channels.GetValueOrDefault(Channels.OriginOf(plate, axis))?.Values.FirstOrDefault() ?? double.NaN;
    }

    private static PlateLoads? Loads(Recording recording, string plate)
    {
        if (Channel("force", 'y') is not { } vertical)
            return null;
        return new PlateLoads(Or("force", 'x'), vertical, Or("force", 'z'), Or("moment", 'x'), Or("moment", 'y'), Or("moment", 'z'));

        double[]? Channel(string quantity, char axis) => recording.Channels.GetValueOrDefault(Channels.OfPlate(plate, quantity, axis))?.Values;

        // A plate that measures vertical force alone gives nothing else: missing, not zero.
        double[] Or(string quantity, char axis) => Channel(quantity, axis) ?? [.. Enumerable.Repeat(double.NaN, vertical.Length)];
    }
}
