namespace SwingStudy.Motion.Forces;

/// <summary>What a plate shows when nobody stands on it.</summary>
/// <param name="ForceX">Mean force, newtons.</param>
/// <param name="ForceY">Up.</param>
/// <param name="ForceZ">To the right.</param>
/// <param name="MomentX">Mean moment, newton metres.</param>
/// <param name="MomentY">About the vertical.</param>
/// <param name="MomentZ">About z.</param>
/// <param name="ScatterN">Standard deviation of the vertical force: noise, and more when somebody stepped on.</param>
public sealed record PlateZero(double ForceX, double ForceY, double ForceZ, double MomentX, double MomentY, double MomentZ, double ScatterN)
{
    /// <summary>Scatter of the vertical force above which a recording is not of an empty plate, newtons. Common practice, no source.</summary>
    public const double MostScatterN = 15;

    /// <summary>Means of a recording of empty plates; null when the plate was not empty and still, since a zero under a standing person is no zero.</summary>
    /// <param name="empty">The recording.</param>
    public static PlateZero? Of(PlateLoads empty)
    {
        var present = empty.ForceY.Where(y => !double.IsNaN(y)).ToList();
        if (present.Count < 2)
            return null;
        var mean = present.Average();
        var scatter = Math.Sqrt(present.Sum(y => (y - mean) * (y - mean)) / (present.Count - 1));
        return scatter > MostScatterN
            ? null
            : new PlateZero(Mean(empty.ForceX), mean, Mean(empty.ForceZ), Mean(empty.MomentX), Mean(empty.MomentY), Mean(empty.MomentZ), scatter);
    }

    private static double Mean(double[] values) => values.Where(x => !double.IsNaN(x)).DefaultIfEmpty(double.NaN).Average();
}
