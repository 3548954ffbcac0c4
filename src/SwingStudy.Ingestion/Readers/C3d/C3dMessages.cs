using System.Globalization;
using SwingStudy.Domain.Problems;

namespace SwingStudy.Ingestion.Readers.C3d;

/// <summary>All that the C3D reader says about files.</summary>
internal static class C3dMessages
{
    private const string Export = "Export it again; the copy may be cut off or of another kind.";

    public static Problem NotC3d(string file, string found) => new("c3d-not-one", new(file), found, "a C3D file: 512 bytes or more, the second of them 0x50", "Check 'reader' of the mapping, and export the file again.");

    public static Problem SectionOutside(string file, int block) => new("c3d-parameters-missing", new(file), Text($"a parameter section in block {block}, which the file does not have"), "a section within the file", Export);

    public static Problem OrderUnknown(string file, int code) => new("c3d-byte-order", new(file), Text($"the processor code {code}"), "84, 85 or 86", Export);

    public static Problem SectionCut(string file) => new("c3d-parameters-cut", new(file), "a parameter section that passes the end of the file", "a whole section", Export);

    public static Problem RecordCut(string file, int at) => new("c3d-parameters-cut", new(file), Text($"a parameter record at byte {at} that passes the end of its section"), "whole records", "What stands before it is used.");

    public static Problem ParameterUnsound(string file, string name, string fault) => new("c3d-parameter-unsound", new(file), $"the parameter {name}, which {fault}", "a sound record", "The others are used.");

    public static Problem DataOutside(string file, int block) => new("c3d-data-missing", new(file), Text($"samples from block {block} on, which the file does not have apart from its parameters"), "samples behind header and parameters", Export);

    public static Problem NothingRecorded(string file) => new("c3d-nothing-recorded", new(file), "neither points nor analog channels", "points or analog channels", "Leave the file out if nothing was recorded.");

    public static Problem ScaleZero(string file) => new("c3d-scale", new(file), "the point scale 0 or no number", "a negative scale (reals) or a positive one (integers)", Export);

    public static Problem RateMissing(string file) => new("c3d-rate", new(file), "no frame rate above 0", "frames a second in header or POINT:RATE", Export);

    public static Problem NoFrames(string file) => new("c3d-no-frames", new(file), "not one whole frame", "frames behind the parameters", Export);

    public static Problem FramesShort(string file, long declared, long found) => new("c3d-frames-short", new(file), Text($"{found} whole frames where {declared} are declared"), "all frames", "The whole frames are taken; export it again if more were recorded.");

    public static Problem Differs(string file, string what, double first, double second, string taken) =>
        new("c3d-differs", new(file), Text($"{what}: {first} in the header, {second} in the parameters"), "one value", $"{taken} is used.");

    public static Problem SignMistaken(string file, int channel) =>
        new("c3d-offset-sign", new(file), Text($"analog channel {channel} with OFFSET -32768 and signed integers"), "OFFSET 32768 with FORMAT UNSIGNED", "The values are taken as written; check their zero.");

    public static Problem EventsShifted(string file, double seconds) =>
        new("c3d-events-shifted", new(file), Text($"event times that count from frame 1 of the recording, {seconds:G6} s before the file"), "times from the first frame of the file", "They are shifted by that time.");

    public static Problem PlatformUnusable(string file, int number, string fault) =>
        new("c3d-platform", new(file), Text($"force platform {number}, which {fault}"), "a platform of type 1 to 4 with its channels and corners", "Its channels are kept as analog channels where they are mapped; no force is computed.");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
