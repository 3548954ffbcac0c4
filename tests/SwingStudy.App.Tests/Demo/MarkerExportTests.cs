using SwingStudy.App.Demo;
using SwingStudy.Ingestion.Readers.C3d;

namespace SwingStudy.App.Tests.Demo;

/// <summary>The marker files are read with the reader of the program and held against the movement that was simulated.</summary>
public class MarkerExportTests
{
    private static readonly IReadOnlyList<DemoStay> Stays = DemoSimulation.Draw(DemoStudy.PlayersWithStarts, DemoStudy.DefaultSeed);
    private static readonly IReadOnlyList<DemoFile> Files = [.. MarkerExport.Files(Stays, DemoStudy.DefaultSeed)];
    private static readonly IReadOnlyList<DemoSwing> Swings =
        [.. Stays.SelectMany(stay => stay.Sessions).Where(session => session.Player.Devices.HasFlag(MovementDevices.Markers)).SelectMany(session => session.Swings)];

    [Fact]
    public void MostSwingsOfPlayersWithMarkersHaveAFileAndNobodyElseHasOne()
    {
        // Each swing is missed with a chance of 4 %.
        Assert.InRange(Files.Count / (double)Swings.Count, 0.92, 0.99);
        Assert.All(Files, file => Assert.Matches(@"^ceiling-cameras/\d{8}_\d{6}\.c3d$", file.Path));
        Assert.Distinct(Files.Select(file => file.Path));
    }

    [Fact]
    public void AFileIsAC3dOfIntegersWithItsRateEventAndParameters()
    {
        foreach (var file in Files.Take(12))
        {
            // C3D: byte 2 of the file is 0x50, and the point scale at bytes 13 to 16 is negative for reals (the C3D file format user guide).
            Assert.Equal(0x50, file.Bytes[1]);
            Assert.True(BitConverter.ToSingle(file.Bytes, 12) > 0);
            var read = Read(file);
            Assert.Equal((MarkerExport.Rate, 310, 16), ((int)read.RateHz, read.Frames, read.Labels.Count));
            Assert.NotEmpty(read.Player);
            Assert.All(read.Strikes, time => Assert.Equal(1.25, time, 3));
        }
    }

    [Fact]
    public void PlacesAreThoseOfTheMovementInTheAxesOfTheDevice()
    {
        var session = Stays.Where(stay => stay.Sessions.Count == 1).Select(stay => stay.Sessions[0]).First(session => session.Player.Devices.HasFlag(MovementDevices.Markers));
        var first = Files.First(file => Read(file).Player == session.Player.Aliases[0]);
        var read = Read(first);
        var best = session.Swings.Min(swing => Difference(read, swing));

        // Noise of 0.6 mm and steps of the integers; another swing differs by centimetres.
        Assert.InRange(best, 0.1, 2);
    }

    [Fact]
    public void HiddenMarkersAreGapsOfAFewFramesAndRare()
    {
        var hidden = Files.Select(Read).SelectMany(read => Enumerable.Range(0, read.Labels.Count).Select(point => Enumerable.Range(0, read.Frames).Count(frame => double.IsNaN(read.At(frame, point).X)))).ToList();

        // One marker in ten is hidden, for two to seven frames.
        Assert.InRange(hidden.Count(frames => frames > 0) / (double)hidden.Count, 0.05, 0.15);
        Assert.All(hidden, frames => Assert.True(frames is 0 or (>= 2 and <= 7)));
    }

    [Fact]
    public void WherePlayersTakeTurnsNoFileNamesOne()
    {
        var turns = Stays.Where(stay => stay.Sessions.Count > 1).SelectMany(stay => stay.Sessions).Where(session => session.Player.Devices.HasFlag(MovementDevices.Markers)).Sum(session => session.Swings.Count);

        Assert.InRange(Files.Count(file => Read(file).Player == "-"), turns * 9 / 10, turns);
    }

    /// <summary>Mean distance of all markers in all frames from the movement of a swing, mm; device axes: x away from the target, y to the right, z up.</summary>
    private static double Difference(Recorded read, DemoSwing swing)
    {
        var distances = new List<double>();
        for (var frame = 0; frame < read.Frames; frame += 10)
        {
            var places = swing.Movement.Points(-1.25 + (frame / (double)MarkerExport.Rate));
            for (var point = 0; point < read.Labels.Count; point++)
            {
                var (x, y, z) = read.At(frame, point);
                (x, y, z) = (x + (1000 * places[point].X), y - (1000 * places[point].Z), z - (1000 * places[point].Y));
                if (!double.IsNaN(x))
                    distances.Add(Math.Sqrt((x * x) + (y * y) + (z * z)));
            }
        }

        return distances.Average();
    }

    private static Recorded Read(DemoFile file)
    {
        Assert.True(C3dFile.Open(new MemoryStream(file.Bytes), file.Path).Succeeded(out var opened));
        using (opened)
        {
            Assert.Empty(opened.Notices);
            return new(opened.RateHz, (int)opened.FrameCount, opened.PointLabels, opened.Parameters.Texts("SUBJECTS", "NAMES")[0], [.. opened.Events.Select(found => found.TimeSeconds)],
                [.. opened.Frames().SelectMany(frames => frames.Points.ToArray())]);
        }
    }

    /// <summary>What a file holds; four numbers a point and frame, the last of them the residual.</summary>
    private sealed record Recorded(double RateHz, int Frames, IReadOnlyList<string> Labels, string Player, IReadOnlyList<double> Strikes, double[] Values)
    {
        public (double X, double Y, double Z) At(int frame, int point) =>
            (Values[4 * ((frame * Labels.Count) + point)], Values[(4 * ((frame * Labels.Count) + point)) + 1], Values[(4 * ((frame * Labels.Count) + point)) + 2]);
    }
}
