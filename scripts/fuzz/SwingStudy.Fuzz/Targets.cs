using System.Text;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Sources;
using SwingStudy.Ingestion.Readers;
using SwingStudy.Ingestion.Readers.C3d;
using SwingStudy.Ingestion.Recordings;

namespace SwingStudy.Fuzz;

/// <summary>All readers with files to start from.</summary>
internal static class Targets
{
    private static readonly double[] Wave = [0, 12.5, -3, 40];

    /// <summary>The readers; workbooks are few, since unpacking is slow.</summary>
    public static IReadOnlyList<Target> All { get; } =
    [
        new("c3d", 12, [.. C3dStorage.All.SelectMany(storage => (byte[][])[C3d(storage, 1), C3d(storage, 0)])], ReadC3d),
        new("c3d recording", 4, [.. C3dStorage.All.Select(storage => C3d(storage, 1))], bytes => ReadRecordings(bytes, C3dMapping)),
        .. Enum.GetValues<RecordingForm>().Select(form => new Target($"text recording, {form}", 3, [Encoding.UTF8.GetBytes(TextOf(form))], bytes => ReadRecordings(bytes, TextMapping(form)))),
        new("delimited rows", 4, [Encoding.UTF8.GetBytes("Bay 2\nNo;Speed\n;mph\n1;93,5\n2;\"94\"\n\nAverage;93\n")], bytes => ReadRows(bytes, Rows(ReaderKind.Delimited))),
        new("lines of JSON", 3, ["{\"No\":1,\"Speed\":93.5}\n{\"No\":2,\"Speed\":\"94\",\"a\":[1,{\"b\":null}]}\n"u8.ToArray()], bytes => ReadRows(bytes, Rows(ReaderKind.Ndjson))),
        new("JSON document", 3, ["[{\"No\":1,\"Speed\":93.5},{\"No\":2,\"Speed\":94}]"u8.ToArray()], bytes => ReadRows(bytes, Rows(ReaderKind.Json))),
    ];

    private static SourceMapping C3dMapping => Mapping(ReaderKind.C3d) with
    {
        Recording = new RecordingRule
        {
            Landmarks = new Dictionary<string, string> { ["club_head"] = "HEAD", ["grip"] = "GRIP" },
            Channels = new Dictionary<string, FieldSource> { ["sound"] = new() { Column = "C0", Unit = "V" } },
            Events = new Dictionary<string, string> { ["impact"] = "Contact" },
            Axes = AxisMap.Of("x", "z", "-y")!,
        },
        Plates = new Dictionary<string, PlateGeometry> { ["lead"] = new() { Platform = 1 } },
    };

    private static byte[] C3d(C3dStorage storage, int platforms)
    {
        var stream = new MemoryStream();
        C3dWriter.Write(stream, new C3dRecording
        {
            RateHz = 100,
            FirstFrame = 5,
            Points = [new C3dPoint("HEAD", Wave, Wave, Wave), new C3dPoint("GRIP", [1, double.NaN, 3, 4], Wave, Wave)],
            AnalogSamples = 2,
            Analog = [.. Enumerable.Range(0, 6).Select(i => new C3dAnalog($"C{i}", i == 0 ? "" : "N", [.. Wave, .. Wave]))],
            Events = [new C3dEvent("Contact", 0.02)],
            Platforms = [.. Enumerable.Range(1, platforms).Select(number => new C3dPlatform(number, 2, [0, 1, 2, 3, 4, 5], [1, 1, 0, 0, 1, 0, 0, 0, 0, 1, 0, 0], [0, 0, -41], []))],
        }, storage);
        return stream.ToArray();
    }

    private static string TextOf(RecordingForm form) => form switch
    {
        RecordingForm.Trials => "Started: 2025-10-07 11:05:40.350\nTrial\tt\tFz\n\ts\tN\n1\t0\t-5.5\n1\t0.01\t-6\n1\t0.03\tNaN\n2\t0\t1e2\n2\t0.01\t3\n",
        RecordingForm.Wide => "Started: 2025-10-07 11:05:40.350\n\t1\t2\nt\tFz\tFz\ns\tN\tN\n0\t1\t2\n0.01\t3\t4\n0.02\t\t5\n",
        RecordingForm.Stream => "Started: 2025-10-07 11:05:40.350\nt\tFz\ts\n0\t1\t0\n0.01\t2\t0\n0.02\t3\t5\n0.03\t4\t5\n0.04\t5\t0\n0.05\t6\t6\n",
        _ => "Player: Ada\nStarted: 2025-10-07 11:05:40.350\nt\tFz\ns\tN\n0\t-5.5\n0.01\t-6\n0.02\tNaN\n0.03\t1e2\n",
    };

    private static SourceMapping TextMapping(RecordingForm form) => Mapping(ReaderKind.Delimited) with
    {
        Layout = new Layout { HeadingRows = form == RecordingForm.Wide ? 2 : 1 },
        Recording = new RecordingRule
        {
            Form = form,
            Trial = form == RecordingForm.Trials ? new FieldSource { Column = "Trial" } : null,
            Cut = form == RecordingForm.Stream ? new StreamCut("s", 3, -0.02, 0.02) : null,
            Clock = new FieldSource { Column = "t", Unit = "s" },
            Channels = new Dictionary<string, FieldSource> { ["lead_force_y"] = new() { Column = "Fz", Unit = "N" } },
        },
    };

    private static SourceMapping Rows(ReaderKind reader) => Mapping(reader) with
    {
        Values = new Dictionary<string, FieldSource> { ["no"] = new() { Column = "No" }, ["speed"] = new() { Column = "Speed" } },
    };

    private static SourceMapping Mapping(ReaderKind reader) => new()
    {
        Source = "fuzz",
        Title = "Fuzz",
        Device = "fuzz",
        Rows = RowMeaning.Recordings,
        Reader = reader,
        Files = ".*",
        Missing = ["NaN"],
        Time = new TimeRule { Parts = [reader == ReaderKind.C3d ? new FieldSource { Constant = "2025-10-07 11:05:40.350" } : new FieldSource { Preamble = "Started: (?<value>.+)" }], Format = "yyyy-MM-dd HH:mm:ss.f", Zone = "Europe/Lisbon" },
        File = "fuzz.yaml",
        Hash = Sha256.Of("fuzz"),
    };

    private static void ReadC3d(byte[] bytes)
    {
        if (!C3dFile.Open(new MemoryStream(bytes), "f").Succeeded(out var file))
            return;
        using (file)
        {
            var frames = file.Frames().Sum(block => (long)block.Count);
            if (frames != file.FrameCount)
                throw new InvalidOperationException($"{frames} frames came where {file.FrameCount} were told.");
        }
    }

    private static void ReadRecordings(byte[] bytes, SourceMapping mapping)
    {
        if (!RecordingReaders.Open(new MemoryStream(bytes), new RecordingRequest { Mapping = mapping, File = "f", Name = "f" }).Succeeded(out var reader))
            return;
        using (reader)
        {
            foreach (var recording in reader.Read())
            {
                if (recording.Curves.Any(curve => curve.Values.Any(double.IsInfinity)))
                    throw new InvalidOperationException("A curve holds an infinite value.");
            }

            if (reader.Problems.Count == 0 && !reader.Counts.Balances)
                throw new InvalidOperationException($"{reader.Counts.Read} lines are not {reader.Counts.Taken} + {reader.Counts.Rejected} + {reader.Counts.NotDataTotal}.");
        }
    }

    private static void ReadRows(byte[] bytes, SourceMapping mapping)
    {
        if (!RecordReaders.Open(new MemoryStream(bytes), "f", mapping).Succeeded(out var document))
            return;
        using (document)
        {
            foreach (var block in document.Blocks())
                block.Dispose();
        }
    }
}
