using SwingStudy.App.Demo.Model;
using SwingStudy.Statistics.Chance;

namespace SwingStudy.App.Demo;

/// <summary>Two invented plates in the floor of the bay, one nearer the target, and their readings during a stay: never zeroed, with noise.</summary>
/// <remarks>
/// Their own axes are x to the right when facing the target, y to the target, z up; readings are reactions on the player, moments about a point in the
/// plate's middle 54 mm below its top.
/// </remarks>
internal sealed class PlateStation
{
    /// <summary>Depth of the origin of moments below the top, m.</summary>
    public const double Depth = 0.054;

    /// <summary>Samples a second.</summary>
    public const int Rate = 200;

    private const double ForceNoise = 1.5;
    private const double MomentNoise = 0.25;

    private static readonly Point3 LeadOrigin = new(0.16, -Depth, -0.83);
    private static readonly Point3 TrailOrigin = new(-0.32, -Depth, -0.83);

    private readonly double[] _zero;
    private readonly Xoshiro256 _chance;

    public PlateStation(Xoshiro256 chance)
    {
        _chance = chance;
        _zero = [.. Enumerable.Range(0, 12).Select(i => (i % 6 < 3 ? 9 : 1.5) * chance.Normal())];
    }

    /// <summary>One sample of both plates: forces and moments of the lead plate, then of the trail plate, in the plates' axes.</summary>
    /// <param name="swing">The swing; null for empty plates.</param>
    /// <param name="time">Seconds from impact.</param>
    public double[] Sample(SwingModel? swing, double time)
    {
        var sample = new double[12];
        if (swing is not null)
        {
            Write(sample.AsSpan(0, 6), swing.Lead(time), LeadOrigin);
            Write(sample.AsSpan(6, 6), swing.Trail(time), TrailOrigin);
        }

        for (var i = 0; i < sample.Length; i++)
            sample[i] += _zero[i] + ((i % 6 < 3 ? ForceNoise : MomentNoise) * _chance.Normal());
        return sample;
    }

    private static void Write(Span<double> sample, FootLoad load, Point3 origin)
    {
        var moment = load.MomentAbout(origin);
        (sample[0], sample[1], sample[2]) = (load.Force.Z, load.Force.X, load.Force.Y);
        (sample[3], sample[4], sample[5]) = (moment.Z, moment.X, moment.Y);
    }
}
