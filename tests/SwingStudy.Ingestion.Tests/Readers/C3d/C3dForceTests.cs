using CsCheck;
using SwingStudy.Ingestion.Readers.C3d;

namespace SwingStudy.Ingestion.Tests.Readers.C3d;

/// <summary>Loads of platforms, against statics: a force F at point p of the surface with a free moment T has the moment p x F + (0, 0, T) about the centre.</summary>
public sealed class C3dForceTests
{
    private const double Depth = -41;

    // Plate axes: x and y as the laboratory's turned half a turn about x, so that z points down, as usual.
    private static readonly double[] Corners = [500, 200, 0, 100, 200, 0, 100, 800, 0, 500, 800, 0];

    private static readonly Gen<(double[] Force, double Px, double Py, double Free)> Loads =
        from force in Gen.Double[-900, 900].Array[3]
        from px in Gen.Double[-200, 200]
        from py in Gen.Double[-300, 300]
        from free in Gen.Double[-40_000, 40_000]
        select (force, px, py, free);

    [Fact]
    public void TypeOneHasThePointOfApplication() => Loads.Sample(load =>
        Same(load, Of(1, [.. load.Force, load.Px, load.Py, load.Free])));

    [Fact]
    public void TypeTwoMovesMomentsFromTheSensorsToTheSurface() => Loads.Sample(load => Same(load, Of(2, [.. load.Force, .. AtSensors(load)])));

    /// <summary>Four three-axis sensors at (+-a, +-b) below the surface share the load as statics says; the fourth is split evenly.</summary>
    [Fact]
    public void TypeThreeAddsFourSensors() => Loads.Sample(load =>
    {
        const double A = 120, B = 210;
        var moment = AtSensors(load);
        var (fx, fy, fz) = (load.Force[0], load.Force[1], load.Force[2]);
        var (bySide, byEnd) = (moment[0] / B, moment[1] / A);
        double[] vertical = [(fz + bySide - byEnd) / 4, (fz + bySide + byEnd) / 4, (fz - bySide + byEnd) / 4, (fz - bySide - byEnd) / 4];
        var turn = moment[2] / (2 * B);
        double[] channels = [(fx / 2) - turn, (fx / 2) + turn, fy / 2, fy / 2, .. vertical];
        Same(load, Of(3, channels, [A, B, Depth]));
    });

    [Fact]
    public void TypeFourIsCalibratedByItsMatrix() => Loads.Sample(load =>
    {
        double[] moments = [.. load.Force, .. AtSensors(load)];
        double[] factors = [100, 200, 300, 10_000, 20_000, 30_000];
        var matrix = new double[36];
        for (var i = 0; i < 6; i++)
            matrix[(6 * i) + i] = factors[i];
        matrix[(6 * 1) + 0] = 50; // Channel 2 speaks into force x.
        double[] volts = [(moments[0] - (50 * moments[1] / 200)) / 100, .. Enumerable.Range(1, 5).Select(i => moments[i] / factors[i])];
        Same(load, Of(4, volts, calibration: matrix));
    });

    [Fact]
    public void AnOriginThatHasTheSensorsAboveTheSurfaceIsTurned()
    {
        var load = (Force: (double[])[10, 20, -700], Px: 30.0, Py: -50.0, Free: 5000.0);
        using var file = SomeC3d.Open(SomeC3d.Bytes(Recording(2, [.. load.Force, .. AtSensors(load)], [0, 0, -Depth], []), C3dStorage.IntelReal));
        var platform = file.Platforms[0].WithSensorsBelow((0, 0, 1));
        Assert.Equal(Depth, platform.Origin[2]);
        Assert.Same(platform, platform.WithSensorsBelow((0, 0, 1)));
        // The same plate hung from above.
        Assert.Same(file.Platforms[0], file.Platforms[0].WithSensorsBelow((0, 0, -1)));
        Same(load, C3dForces.Of(platform, [.. Enumerable.Range(0, 6).Select(channel => SomeC3d.Analog(file, channel))]), 1e-3);
    }

    [Theory]
    [InlineData(5)]
    [InlineData(21)]
    [InlineData(0)]
    public void APlatformOfAnUnknownTypeIsToldAndItsChannelsStay(int type)
    {
        using var file = SomeC3d.Open(SomeC3d.Bytes(Recording(type, [1, 2, 3, 4, 5, 6], [0, 0, Depth], []), C3dStorage.IntelReal));
        Assert.Empty(file.Platforms);
        Assert.Contains($"type {type}", Assert.Single(file.Notices).Found, StringComparison.Ordinal);
        Assert.Equal([3.0], SomeC3d.Analog(file, 2));
    }

    [Fact]
    public void SixChannelsForATypeOfEightGiveNoForce()
    {
        using var file = SomeC3d.Open(SomeC3d.Bytes(Recording(3, [1, 2, 3, 4, 5, 6], [100, 200, Depth], []), C3dStorage.IntelReal));
        Assert.Empty(file.Platforms);
        Assert.Equal("c3d-platform", Assert.Single(file.Notices).Code);
    }

    private static C3dRecording Recording(int type, double[] channels, double[] origin, double[] calibration) => new()
    {
        RateHz = 100,
        Analog = [.. channels.Select((value, i) => new C3dAnalog($"C{i}", i < 3 ? "N" : "Nmm", [value]))],
        Platforms = [new C3dPlatform(1, type, [.. Enumerable.Range(0, channels.Length)], Corners, origin, calibration)],
    };

    private static double[] AtSensors((double[] Force, double Px, double Py, double Free) load)
    {
        var (fx, fy, fz) = (load.Force[0], load.Force[1], load.Force[2]);
        return [(load.Py * fz) - (Depth * fy), (Depth * fx) - (load.Px * fz), (load.Px * fy) - (load.Py * fx) + load.Free];
    }

    private static double[][] Of(int type, double[] channels, double[]? origin = null, double[]? calibration = null) =>
        C3dForces.Of(new C3dPlatform(1, type, [.. Enumerable.Range(0, channels.Length)], Corners, origin ?? [0, 0, Depth], calibration ?? []), [.. channels.Select(value => (double[])[value])]);

    /// <summary>The plate's x is the laboratory's, its y and z point the other way.</summary>
    private static void Same((double[] Force, double Px, double Py, double Free) load, double[][] found, double tolerance = 1e-6)
    {
        var (fx, fy, fz) = (load.Force[0], load.Force[1], load.Force[2]);
        double[] expected = [fx, -fy, -fz, load.Py * fz, load.Px * fz, -((load.Px * fy) - (load.Py * fx) + load.Free)];
        for (var i = 0; i < 6; i++)
            Assert.Equal(expected[i], found[i][0], Math.Max(tolerance, Math.Abs(expected[i]) * 1e-6));
    }
}
