using SwingStudy.Domain.Problems;
using SwingStudy.Ingestion.Readers.C3d;

namespace SwingStudy.Ingestion.Tests.Readers.C3d;

/// <summary>Small C3D recordings to test with.</summary>
internal static class SomeC3d
{
    /// <summary>Two points, one of them lost in the second frame, and a channel of two samples a frame.</summary>
    public static C3dRecording Recording { get; } = new()
    {
        RateHz = 100,
        Points =
        [
            new C3dPoint("HEAD", [1, 2, 3], [10, 20, 30], [100, 200, 300]),
            new C3dPoint("GRIP", [-1, double.NaN, -3], [-10, double.NaN, -30], [0, double.NaN, 0]) { Residuals = [0.5, double.NaN, 0] },
        ],
        AnalogSamples = 2,
        Analog = [new C3dAnalog("SOUND", "V", [0, 1, -2, 3, -4, 5])],
        Events = [new C3dEvent("Contact", 0.02, "General", "Ada")],
        Texts = new Dictionary<(string, string), IReadOnlyList<string>> { [("SUBJECTS", "NAMES")] = ["Ada"] },
    };

    public static byte[] Bytes(C3dRecording recording, C3dStorage storage)
    {
        var stream = new MemoryStream();
        C3dWriter.Write(stream, recording, storage);
        return stream.ToArray();
    }

    public static byte[] Bytes() => Bytes(Recording, C3dStorage.IntelReal);

    public static C3dFile Open(byte[] bytes)
    {
        var outcome = C3dFile.Open(new MemoryStream(bytes), "a.c3d");
        Assert.True(outcome.Succeeded(out var file), string.Join(Environment.NewLine, outcome.Problems));
        return file;
    }

    public static Problem Held(byte[] bytes) => Assert.Single(C3dFile.Open(new MemoryStream(bytes), "a.c3d").Problems);

    /// <summary>Coordinates and residual of a point over all frames.</summary>
    public static double[][] Point(C3dFile file, int point)
    {
        double[][] series = [.. Enumerable.Range(0, 4).Select(_ => new double[file.FrameCount])];
        foreach (var frames in file.Frames())
        {
            for (var frame = 0; frame < frames.Count; frame++)
            {
                for (var i = 0; i < 4; i++)
                    series[i][frames.First + frame] = frames.Points.Span[(((frame * file.PointLabels.Count) + point) * 4) + i];
            }
        }

        return series;
    }

    public static double[] Analog(C3dFile file, int channel)
    {
        var series = new List<double>();
        foreach (var frames in file.Frames())
        {
            for (var i = channel; i < frames.Analog.Length; i += file.AnalogLabels.Count)
                series.Add(frames.Analog.Span[i]);
        }

        return [.. series];
    }

    /// <summary>Changes the 16-bit word of a number from 1 in the header.</summary>
    public static byte[] WithWord(byte[] bytes, int number, int value)
    {
        var changed = (byte[])bytes.Clone();
        System.Buffers.Binary.BinaryPrimitives.WriteUInt16LittleEndian(changed.AsSpan((number - 1) * 2), (ushort)value);
        return changed;
    }

    /// <summary>Changes bytes of a parameter's data.</summary>
    public static byte[] WithData(byte[] bytes, string name, params byte[] data)
    {
        var changed = (byte[])bytes.Clone();
        var text = System.Text.Encoding.ASCII.GetBytes(name);
        var at = 514;
        while (!changed.AsSpan(at).StartsWith(text) || changed[at - 2] != name.Length)
            at++;
        var start = at + name.Length + 4 + changed[at + name.Length + 3];
        data.CopyTo(changed, start);
        return changed;
    }
}
