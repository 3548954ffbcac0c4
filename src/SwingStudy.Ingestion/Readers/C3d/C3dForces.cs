namespace SwingStudy.Ingestion.Readers.C3d;

/// <summary>Force and moment of a platform in the laboratory of its file, about the centre of its surface.</summary>
/// <remarks>Formulas of the C3D user guide, c3d.org: types 1 to 4; moments go to the surface with M' = M + F x origin.</remarks>
public static class C3dForces
{
    /// <summary>Six series: force x, y, z in the unit of the channels, then moment x, y, z in that unit times the unit of points.</summary>
    /// <param name="platform">The platform.</param>
    /// <param name="channels">Samples of its channels in their order, of one length.</param>
    /// <exception cref="ArgumentException">The number of channels is not that of the platform.</exception>
    public static double[][] Of(C3dPlatform platform, IReadOnlyList<double[]> channels)
    {
        if (channels.Count != platform.Channels.Count)
            throw new ArgumentException($"Platform {platform.Number} has {platform.Channels.Count} channels, got {channels.Count}.", nameof(channels));
        var frame = new C3dPlateFrame(platform.Corners);
        var length = channels[0].Length;
        double[][] series = [.. Enumerable.Range(0, 6).Select(_ => new double[length])];
        Span<double> load = stackalloc double[6];
        Span<double> sample = stackalloc double[8];
        for (var i = 0; i < length; i++)
        {
            for (var channel = 0; channel < channels.Count; channel++)
                sample[channel] = channels[channel][i];
            AtSurface(platform, sample, load);
            (series[0][i], series[1][i], series[2][i]) = frame.ToLaboratory(load[0], load[1], load[2]);
            (series[3][i], series[4][i], series[5][i]) = frame.ToLaboratory(load[3], load[4], load[5]);
        }

        return series;
    }

    private static void AtSurface(C3dPlatform platform, ReadOnlySpan<double> sample, Span<double> load)
    {
        double ox = platform.Origin[0], oy = platform.Origin[1], oz = platform.Origin[2];
        switch (platform.Type)
        {
            case 1:
                // Px and Py lie on the surface; the sixth channel is the free moment there.
                sample[..3].CopyTo(load);
                load[3] = sample[4] * sample[2];
                load[4] = -sample[3] * sample[2];
                load[5] = (sample[3] * sample[1]) - (sample[4] * sample[0]) + sample[5];
                return;
            case 3:
                (ox, oy) = (Math.Abs(ox), Math.Abs(oy));
                var (x12, x34, y14, y23) = (sample[0], sample[1], sample[2], sample[3]);
                var (z1, z2, z3, z4) = (sample[4], sample[5], sample[6], sample[7]);
                load[0] = x12 + x34;
                load[1] = y14 + y23;
                load[2] = z1 + z2 + z3 + z4;
                load[3] = oy * (z1 + z2 - z3 - z4);
                load[4] = ox * (-z1 + z2 + z3 - z4);
                load[5] = (oy * (x34 - x12)) + (ox * (y14 - y23));
                (ox, oy) = (0, 0);
                break;
            case 4:
                for (var row = 0; row < 6; row++)
                {
                    load[row] = 0;
                    for (var column = 0; column < 6; column++)
                        load[row] += platform.Calibration[(6 * column) + row] * sample[column];
                }

                break;
            default:
                sample[..6].CopyTo(load);
                break;
        }

        double fx = load[0], fy = load[1], fz = load[2];
        load[3] += (fy * oz) - (fz * oy);
        load[4] += (fz * ox) - (fx * oz);
        load[5] += (fx * oy) - (fy * ox);
    }
}
