using SwingStudy.Motion.Geometry;
using SwingStudy.Motion.Signals;

namespace SwingStudy.Motion.Forces;

/// <summary>Forces and moments of one plate over time: the reaction on the player, in laboratory axes, moments about the plate's origin.</summary>
/// <param name="ForceX">Newtons, to the target.</param>
/// <param name="ForceY">Up.</param>
/// <param name="ForceZ">To the right facing the target.</param>
/// <param name="MomentX">Newton metres about the x axis.</param>
/// <param name="MomentY">About the y axis.</param>
/// <param name="MomentZ">About the z axis.</param>
public sealed record PlateLoads(double[] ForceX, double[] ForceY, double[] ForceZ, double[] MomentX, double[] MomentY, double[] MomentZ)
{
    /// <summary>Number of samples.</summary>
    public int Count => ForceY.Length;

    /// <summary>Each channel changed by the same function of its samples.</summary>
    public PlateLoads Map(Func<double[], double[]> change) =>
        new(change(ForceX), change(ForceY), change(ForceZ), change(MomentX), change(MomentY), change(MomentZ));

    /// <summary>Low-passed, within each stretch without missing samples.</summary>
    /// <param name="filter">The filter.</param>
    /// <param name="sampleRateHz">Samples a second.</param>
    public PlateLoads Filtered(LowPass filter, double sampleRateHz)
    {
        var filtered = filter.ApplyToStretches([ForceX, ForceY, ForceZ, MomentX, MomentY, MomentZ], sampleRateHz);
        return new(filtered[0], filtered[1], filtered[2], filtered[3], filtered[4], filtered[5]);
    }

    /// <summary>From what the player does to the plate to what the plate does to the player, or back: all six change sign, the centre of pressure does not.</summary>
    public PlateLoads Opposite() => Map(values => [.. values.Select(x => -x)]);

    /// <summary>Less what the empty plate shows.</summary>
    public PlateLoads Less(PlateZero zero) => new(
        Less(ForceX, zero.ForceX), Less(ForceY, zero.ForceY), Less(ForceZ, zero.ForceZ),
        Less(MomentX, zero.MomentX), Less(MomentY, zero.MomentY), Less(MomentZ, zero.MomentZ));

    /// <summary>Loads given in other axes, turned.</summary>
    public PlateLoads Turned(Rotation3D toLaboratory)
    {
        var turned = new PlateLoads(new double[Count], new double[Count], new double[Count], new double[Count], new double[Count], new double[Count]);
        for (var i = 0; i < Count; i++)
        {
            (turned.ForceX[i], turned.ForceY[i], turned.ForceZ[i]) = toLaboratory.Turn(new Vector3D(ForceX[i], ForceY[i], ForceZ[i]));
            (turned.MomentX[i], turned.MomentY[i], turned.MomentZ[i]) = toLaboratory.Turn(new Vector3D(MomentX[i], MomentY[i], MomentZ[i]));
        }

        return turned;
    }

    private static double[] Less(double[] values, double zero) => [.. values.Select(x => x - zero)];
}
