using CsCheck;
using SwingStudy.Ingestion.Readers.C3d;

namespace SwingStudy.Ingestion.Tests.Readers.C3d;

/// <summary>What is written in any storage is read back, to the precision that the storage has.</summary>
public sealed class C3dRoundTripTests
{
    private static readonly Gen<double> Coordinate = Gen.Frequency((6, Gen.Double[-4000, 4000]), (1, Gen.Const(double.NaN)), (1, Gen.Const(0.0)));

    private static readonly Gen<C3dRecording> Recordings =
        from frames in Gen.Int[1, 40]
        from points in Gen.Int[0, 4]
        from channels in Gen.Int[0, 4]
        from samples in Gen.Int[1, 5]
        from coordinates in Coordinate.Array[frames * points * 3]
        from analog in Gen.Double[-900, 900].Array[frames * channels * samples]
        from first in Gen.OneOf(Gen.Const(1), Gen.Int[1, 200_000])
        from rate in Gen.OneOf(60.0, 100, 240, 119.88, 1000)
        from times in Gen.Double[-1, 20].Array[0, 6]
        from isUnsigned in Gen.Bool
        where points + channels > 0
        select new C3dRecording
        {
            RateHz = rate,
            FirstFrame = first,
            Points = [.. Enumerable.Range(0, points).Select(i => new C3dPoint($"P{i}", Part(coordinates, 3 * i, frames), Part(coordinates, (3 * i) + 1, frames), Part(coordinates, (3 * i) + 2, frames)))],
            Analog = [.. Enumerable.Range(0, channels).Select(i => new C3dAnalog($"A{i}", "N", Part(analog, i, frames * samples)))],
            AnalogSamples = samples,
            IsAnalogUnsigned = isUnsigned,
            Events = [.. times.Select((time, i) => new C3dEvent($"event {i}", time + (22 * i), "General", "Ünal"))],
        };

    [Fact]
    public void EveryStorageKeepsPointsChannelsAndEvents() => Gen.Select(Recordings, Gen.Int[0, C3dStorage.All.Count - 1].Select(i => C3dStorage.All[i])).Sample((recording, storage) =>
    {
        using var file = SomeC3d.Open(SomeC3d.Bytes(recording, storage));
        Assert.Equal(storage, file.Storage);
        Assert.Equal((recording.FrameCount, recording.FirstFrame), (file.FrameCount, file.FirstFrame));
        Assert.Equal(recording.RateHz, file.RateHz, 1e-4 * recording.RateHz);
        Assert.Equal(recording.Points.Select(point => point.Label), file.PointLabels);
        Assert.Equal(recording.Analog.Select(channel => channel.Label), file.AnalogLabels);
        for (var i = 0; i < recording.Points.Count; i++)
            SamePoint(recording, i, SomeC3d.Point(file, i), storage);
        for (var i = 0; i < recording.Analog.Count; i++)
            Same(recording.Analog[i].Values, SomeC3d.Analog(file, i), storage, recording.Analog[i].Values.Max(Math.Abs));
        Assert.Equal(recording.Events.OrderBy(found => found.TimeSeconds).Select(found => (found.Label, found.Subject)), file.Events.Select(found => (found.Label, found.Subject)));
        foreach (var (written, read) in recording.Events.OrderBy(found => found.TimeSeconds).Zip(file.Events))
            Assert.Equal(written.TimeSeconds, read.TimeSeconds, 1e-5);
        Assert.Empty(file.Notices);
    }, iter: 600);

    /// <summary>Every finite single but the subnormal ones and those beyond the range of VAX F reals comes back bit by bit.</summary>
    [Fact]
    public void VaxRealsKeepAllDigits() => Gen.Single.Where(value => float.IsFinite(value) && (value == 0 || Math.Abs(value) is > 2e-38f and < 1.7e38f))
        .Sample(value => Assert.Equal(value, (float)C3dWords.FromDec(C3dWords.ToDec(value))), iter: 20_000);

    /// <summary>Sign, exponent and fraction as the C3D user guide (c3d.org) gives them for the bytes b0 to b3.</summary>
    [Theory]
    [InlineData(0x80, 0x40, 0, 0, 1.0)]
    [InlineData(0x60, 0x41, 0, 0, 3.5)]
    [InlineData(0x80, 0xC0, 0, 0, -1.0)]
    [InlineData(0x00, 0x00, 0, 0, 0.0)]
    [InlineData(0xC8, 0x43, 0, 0, 100.0)]
    [InlineData(0xFF, 0x7F, 0xFF, 0xFF, 1.7014117331926443e38)]
    public void VaxRealsReadAsTheGuideSays(byte b0, byte b1, byte b2, byte b3, double value) => Assert.Equal(value, C3dWords.FromDec((uint)(b0 | (b1 << 8) | (b2 << 16) | (b3 << 24))));

    [Fact]
    public void MoreThanAHundredThousandFramesKeepTheirNumber()
    {
        var x = Enumerable.Range(0, 100_000).Select(i => (double)i % 1000).ToArray();
        var recording = new C3dRecording { RateHz = 1000, Points = [new C3dPoint("A", x, x, x)], FirstFrame = 70_001 };
        using var file = SomeC3d.Open(SomeC3d.Bytes(recording, C3dStorage.IntelReal));
        Assert.Equal((100_000L, 70_001L), (file.FrameCount, file.FirstFrame));
        Assert.Equal(x, SomeC3d.Point(file, 0)[0]);
    }

    [Fact]
    public void LabelsPast255GoOn()
    {
        var recording = new C3dRecording
        {
            RateHz = 50,
            Points = [.. Enumerable.Range(0, 300).Select(i => new C3dPoint($"POINT{i:D3}", [i], [i], [i]))],
            Analog = [.. Enumerable.Range(0, 520).Select(i => new C3dAnalog($"CH{i}", i % 2 == 0 ? "V" : "N", [i]))],
        };
        foreach (var storage in C3dStorage.All)
        {
            using var file = SomeC3d.Open(SomeC3d.Bytes(recording, storage));
            Assert.Equal(("POINT299", "CH519", "N"), (file.PointLabels[299], file.AnalogLabels[519], file.AnalogUnits[519]));
            Assert.Equal(519, SomeC3d.Analog(file, 519)[0], 1e-3);
        }
    }

    [Fact]
    public void ResidualsAreKeptAndLostPointsHaveNone()
    {
        foreach (var storage in C3dStorage.All)
        {
            using var file = SomeC3d.Open(SomeC3d.Bytes(SomeC3d.Recording, storage));
            var grip = SomeC3d.Point(file, 1);
            Assert.Equal(0.5, grip[3][0], 0.005);
            Assert.True(double.IsNaN(grip[3][1]) && double.IsNaN(grip[0][1]));
            Assert.Equal(0, grip[3][2]);
        }
    }

    private static double[] Part(double[] all, int index, int length) => all[(index * length)..((index + 1) * length)];

    private static void SamePoint(C3dRecording recording, int index, double[][] read, C3dStorage storage)
    {
        var point = recording.Points[index];
        var largest = recording.Points.SelectMany(other => other.X.Concat(other.Y).Concat(other.Z)).Where(double.IsFinite).Select(Math.Abs).DefaultIfEmpty(0).Max();
        double[][] written = [point.X, point.Y, point.Z];
        for (var frame = 0; frame < recording.FrameCount; frame++)
        {
            var isSeen = written.All(series => double.IsFinite(series[frame]));
            for (var axis = 0; axis < 3; axis++)
                Same([isSeen ? written[axis][frame] : double.NaN], [read[axis][frame]], storage, largest);
        }
    }

    private static void Same(double[] written, double[] read, C3dStorage storage, double largest)
    {
        var tolerance = Math.Max(storage.IsReal ? 1e-6 * largest : largest / 32000 * 0.501, 1e-29);
        Assert.Equal(written.Length, read.Length);
        for (var i = 0; i < written.Length; i++)
            Assert.True(double.IsNaN(written[i]) == double.IsNaN(read[i]) && !(Math.Abs(written[i] - read[i]) > tolerance), $"{written[i]} came back as {read[i]}");
    }
}
