using System.Buffers.Binary;
using SwingStudy.Ingestion.Readers.C3d;

namespace SwingStudy.Ingestion.Tests.Readers.C3d;

/// <summary>Files as they come: cut off, contradicting, pointing nowhere. Oddities are those that the C3D user guide (c3d.org) names or public files show.</summary>
public sealed class C3dFileTests
{
    [Theory]
    [InlineData(0)]
    [InlineData(100)]
    [InlineData(511)]
    public void AFileShorterThanItsHeaderIsHeld(int length) => Assert.Equal("c3d-not-one", SomeC3d.Held(SomeC3d.Bytes()[..length]).Code);

    [Fact]
    public void AFileOfAnotherKindIsHeld() => Assert.Equal("c3d-not-one", SomeC3d.Held([.. "PK"u8, .. new byte[2000]]).Code);

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(255)]
    public void AParameterSectionOutsideTheFileIsHeld(byte block)
    {
        var bytes = SomeC3d.Bytes();
        bytes[0] = block;
        Assert.Equal("c3d-parameters-missing", SomeC3d.Held(bytes).Code);
    }

    [Fact]
    public void AnUnknownByteOrderIsHeld()
    {
        var bytes = SomeC3d.Bytes();
        bytes[512 + 3] = 83;
        Assert.Equal("c3d-byte-order", SomeC3d.Held(bytes).Code);
    }

    /// <summary>Zero and header: no block of samples; 2: the parameters themselves; 9999: beyond the end.</summary>
    [Theory]
    [InlineData(2)]
    [InlineData(9999)]
    public void SamplesThatPointNowhereAreHeld(int block) => Assert.Equal("c3d-data-missing", SomeC3d.Held(SomeC3d.WithWord(SomeC3d.Bytes(), 9, block)).Code);

    [Fact]
    public void AMissingPointerToSamplesIsTakenFromTheParameters()
    {
        using var file = SomeC3d.Open(SomeC3d.WithWord(SomeC3d.Bytes(), 9, 0));
        Assert.Equal([1.0, 2, 3], SomeC3d.Point(file, 0)[0]);
    }

    [Fact]
    public void AScaleOfZeroIsHeld()
    {
        var bytes = SomeC3d.WithData(SomeC3d.Bytes(), "SCALE", 0, 0, 0, 0);
        BinaryPrimitives.WriteSingleLittleEndian(bytes.AsSpan(12), 0);
        Assert.Equal("c3d-scale", SomeC3d.Held(bytes).Code);
    }

    [Fact]
    public void WithoutPointsAndChannelsAFileIsHeld()
    {
        var bytes = SomeC3d.WithData(SomeC3d.WithWord(SomeC3d.WithWord(SomeC3d.Bytes(), 2, 0), 3, 0), "USED", 0, 0);
        Assert.Equal("c3d-nothing-recorded", SomeC3d.Held(bytes).Code);
    }

    [Fact]
    public void AShortFileHoldsItsWholeFrames()
    {
        var x = Enumerable.Range(0, 200).Select(i => (double)i).ToArray();
        var bytes = SomeC3d.Bytes(new C3dRecording { RateHz = 100, Points = [new C3dPoint("A", x, x, x)] }, C3dStorage.IntelReal);
        using var file = SomeC3d.Open(bytes[..^1000]);
        Assert.InRange(file.FrameCount, 100, 199);
        Assert.Equal(x[..(int)file.FrameCount], SomeC3d.Point(file, 0)[0]);
        Assert.Equal("c3d-frames-short", Assert.Single(file.Notices).Code);
    }

    [Fact]
    public void AFileCutBeforeItsFirstFrameIsHeld()
    {
        var bytes = SomeC3d.Bytes();
        var start = (BinaryPrimitives.ReadUInt16LittleEndian(bytes.AsSpan(16)) - 1) * 512;
        Assert.Equal("c3d-no-frames", SomeC3d.Held(bytes[..(start + 3)]).Code);
    }

    [Fact]
    public void AbsurdCountsAllocateNothing()
    {
        var bytes = SomeC3d.WithWord(SomeC3d.WithWord(SomeC3d.WithWord(SomeC3d.Bytes(), 2, 65535), 3, 65535), 5, 65535);
        var before = GC.GetAllocatedBytesForCurrentThread();
        var outcome = C3dFile.Open(new MemoryStream(bytes), "a.c3d");
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 16 << 20);
        Assert.False(outcome.Succeeded(out _));
    }

    /// <summary>Seen: POINT:USED one above the header's count, where only the header's fits the file.</summary>
    [Fact]
    public void OfTwoCountsOfPointsTheOneThatFitsIsTaken()
    {
        using var file = SomeC3d.Open(SomeC3d.WithData(SomeC3d.Bytes(), "USED", 3, 0));
        Assert.Equal(2, file.PointLabels.Count);
        Assert.Equal("c3d-differs", Assert.Single(file.Notices).Code);
        Assert.Equal([100.0, 200, 300], SomeC3d.Point(file, 0)[2]);
    }

    /// <summary>Every pointer, length and dimension of the section is set to extremes in turn: the walk ends, and no exception escapes.</summary>
    [Fact]
    public void NoByteOfTheParametersCanStallOrBreakTheReader()
    {
        var bytes = SomeC3d.Bytes();
        for (var at = 512; at < 1600; at++)
        {
            foreach (var value in (byte[])[0, 1, 127, 128, 255])
            {
                var changed = (byte[])bytes.Clone();
                changed[at] = value;
                if (!C3dFile.Open(new MemoryStream(changed), "a.c3d").Succeeded(out var file, out var problems))
                {
                    Assert.NotEmpty(problems);
                    continue;
                }

                using (file)
                    Assert.Equal(file.FrameCount, file.Frames().Sum(frames => (long)frames.Count));
            }
        }
    }

    [Fact]
    public void APointerToItselfEndsTheWalk()
    {
        var bytes = SomeC3d.Bytes();
        var name = bytes.AsSpan().IndexOf("LABELS"u8);
        (bytes[name + 6], bytes[name + 7]) = (1, 0);
        using var file = SomeC3d.Open(bytes);
        Assert.Contains(file.Notices, notice => notice.Code == "c3d-parameter-unsound");
    }

    /// <summary>Seen: no closing record at all.</summary>
    [Fact]
    public void AListWithoutAnEndIsBoundedByItsBlocks()
    {
        var bytes = SomeC3d.Bytes();
        var end = 512 + (bytes[514] * 512);
        var last = bytes.AsSpan(512, end - 512).LastIndexOfAnyExcept((byte)0) + 512;
        bytes.AsSpan(last + 1, end - last - 1).Fill(0x20);
        using var file = SomeC3d.Open(bytes);
        Assert.Equal(["HEAD", "GRIP"], file.PointLabels);
    }

    [Fact]
    public void EventsThatCountFromTheRecordingAreShifted()
    {
        var x = new double[340];
        var recording = new C3dRecording { RateHz = 200, FirstFrame = 705, Points = [new C3dPoint("A", x, x, x)], Events = [new C3dEvent("on", 3.59), new C3dEvent("off", 4.53)] };
        using var file = SomeC3d.Open(SomeC3d.Bytes(recording, C3dStorage.IntelReal));
        Assert.Equal([0.07, 1.01], file.Events.Select(found => Math.Round(found.TimeSeconds, 4)));
        Assert.Equal("c3d-events-shifted", Assert.Single(file.Notices).Code);
    }

    [Fact]
    public void HeaderEventsAreReadWhereTheGroupHasNone()
    {
        var bytes = SomeC3d.WithWord(SomeC3d.Bytes(SomeC3d.Recording with { Events = [] }, C3dStorage.IntelReal), 151, 1);
        BinaryPrimitives.WriteSingleLittleEndian(bytes.AsSpan(152 * 2), 0.01f);
        "HIT "u8.CopyTo(bytes.AsSpan(198 * 2));
        using var file = SomeC3d.Open(bytes);
        var found = Assert.Single(file.Events);
        Assert.Equal(("HIT", 0.01), (found.Label, Math.Round(found.TimeSeconds, 6)));
    }

    [Theory]
    [InlineData(19, 12345)]
    [InlineData(1, 0)]
    public void HeaderEventsThatCannotBeReadAreNone(int count, int key)
    {
        using var file = SomeC3d.Open(SomeC3d.WithWord(SomeC3d.WithWord(SomeC3d.Bytes(), 151, count), 150, key));
        Assert.Single(file.Events);
    }

    [Fact]
    public void AMistakenSignOfAnOffsetIsTold()
    {
        using var file = SomeC3d.Open(SomeC3d.WithData(SomeC3d.Bytes(), "OFFSET", 0, 0x80));
        Assert.Equal("c3d-offset-sign", Assert.Single(file.Notices).Code);
    }

    [Fact]
    public void PointsAloneAndChannelsAloneAreRead()
    {
        using var points = SomeC3d.Open(SomeC3d.Bytes(SomeC3d.Recording with { Analog = [] }, C3dStorage.IntelReal));
        using var channels = SomeC3d.Open(SomeC3d.Bytes(SomeC3d.Recording with { Points = [] }, C3dStorage.IntelReal));
        Assert.Equal((3L, 0), (points.FrameCount, points.AnalogLabels.Count));
        Assert.Equal([0.0, 1, -2, 3, -4, 5], SomeC3d.Analog(channels, 0));
        Assert.Equal(200, channels.AnalogRateHz);
    }
}
