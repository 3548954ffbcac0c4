namespace SwingStudy.Motion.Forces;

/// <summary>The reaction of the ground under one foot or both: force, centre of pressure, moment about the vertical through it.</summary>
/// <remarks>
/// With the origin of the loads at O, the ground at height h above it, force F and moment M about O (y up): x = Ox + (Mz + h Fx)/Fy,
/// z = Oz + (h Fz − Mx)/Fy, T = My − (z − Oz) Fx + (x − Ox) Fz. In a frame with z up these are copx = ox + (h Fx − My)/Fz and
/// copy = oy + (h Fy + Mx)/Fz. Loads of two plates add once both are about one point; the sum's centre of pressure is Σ Fyᵢ copᵢ / Σ Fyᵢ and its moment
/// Σ (Tᵢ + ((copᵢ − cop) × Fᵢ)y), the moment that turns the player as a whole. Where the vertical force is small both are left blank.
/// Source: Winter (2009), Biomechanics and Motor Control of Human Movement, ch. 5.
/// </remarks>
/// <param name="ForceX">Newtons, to the target.</param>
/// <param name="ForceY">Up.</param>
/// <param name="ForceZ">To the right facing the target.</param>
/// <param name="CentreX">Centre of pressure along the target line, metres in the laboratory; NaN where blank.</param>
/// <param name="CentreZ">Centre of pressure across it.</param>
/// <param name="VerticalMoment">Moment about the vertical through the centre of pressure, newton metres, right-handed about up: the free moment of one
/// plate, the pivot moment of both.</param>
public sealed record GroundReaction(
    double[] ForceX, double[] ForceY, double[] ForceZ, double[] CentreX, double[] CentreZ, double[] VerticalMoment)
{
    /// <summary>Least vertical force for a centre of pressure whatever the player weighs, newtons.</summary>
    public const double LeastForceN = 20;

    /// <summary>Share of body weight below which the centre of pressure is blank.</summary>
    public const double LeastShareOfWeight = 0.05;

    /// <summary>Number of samples.</summary>
    public int Count => ForceY.Length;

    /// <summary>The vertical force below which the centre of pressure of a player is blank: max(20 N, 5 % of body weight).</summary>
    public static double LeastForce(double bodyWeightN) => Math.Max(LeastForceN, LeastShareOfWeight * bodyWeightN);

    /// <summary>The reaction on one plate or the sum of several that share one clock.</summary>
    /// <param name="plates">Loads and poses, equally many samples each.</param>
    /// <param name="leastForceN">Vertical force below which centre of pressure and moment are blank.</param>
    /// <exception cref="ArgumentException">There is no plate, or their samples differ in number.</exception>
    public static GroundReaction Of(IReadOnlyList<(PlateLoads Loads, PlatePose Pose)> plates, double leastForceN)
    {
        if (plates.Count == 0 || plates.Any(plate => plate.Loads.Count != plates[0].Loads.Count))
            throw new ArgumentException("Plates need equally many samples.", nameof(plates));
        var count = plates[0].Loads.Count;
        var reaction = new GroundReaction(new double[count], new double[count], new double[count], new double[count], new double[count], new double[count]);
        foreach (var (loads, pose) in plates)
            reaction.Add(loads, pose);
        reaction.Finish(leastForceN);
        return reaction;
    }

    /// <summary>The reaction on one plate.</summary>
    /// <inheritdoc cref="Of(IReadOnlyList{ValueTuple{PlateLoads, PlatePose}}, double)"/>
    public static GroundReaction Of(PlateLoads loads, PlatePose pose, double leastForceN) => Of([(loads, pose)], leastForceN);

    /// <summary>Adds forces, moments about the laboratory's vertical, and, in place of the centres of pressure, the moments of vertical forces that these are made of.</summary>
    private void Add(PlateLoads loads, PlatePose pose)
    {
        ReadOnlySpan<double> forceX = loads.ForceX, forceY = loads.ForceY, forceZ = loads.ForceZ, momentX = loads.MomentX, momentY = loads.MomentY, momentZ = loads.MomentZ;
        Span<double> x = ForceX, y = ForceY, z = ForceZ, alongX = CentreX, alongZ = CentreZ, vertical = VerticalMoment;
        var (originX, height, originZ) = (pose.Origin.X, pose.HeightM, pose.Origin.Z);
        for (var i = 0; i < forceY.Length; i++)
        {
            var (fx, fy, fz) = (forceX[i], forceY[i], forceZ[i]);
            x[i] += fx;
            y[i] += fy;
            z[i] += fz;
            alongX[i] += (originX * fy) + momentZ[i] + (height * fx);
            alongZ[i] += (originZ * fy) + (height * fz) - momentX[i];
            vertical[i] += momentY[i] + (originZ * fx) - (originX * fz);
        }
    }

    /// <summary>Makes centres of pressure, and moments through them, of the sums.</summary>
    private void Finish(double leastForceN)
    {
        Span<double> y = ForceY, centreX = CentreX, centreZ = CentreZ, vertical = VerticalMoment;
        for (var i = 0; i < y.Length; i++)
        {
            var isLoaded = y[i] >= leastForceN;
            centreX[i] = isLoaded ? centreX[i] / y[i] : double.NaN;
            centreZ[i] = isLoaded ? centreZ[i] / y[i] : double.NaN;
            vertical[i] = vertical[i] - (centreZ[i] * ForceX[i]) + (centreX[i] * ForceZ[i]);
        }
    }
}
