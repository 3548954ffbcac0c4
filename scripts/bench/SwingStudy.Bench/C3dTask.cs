using System.Diagnostics;
using System.Globalization;
using SwingStudy.Ingestion.Readers.C3d;

namespace SwingStudy.Bench;

/// <summary>Reads all frames of a large C3D file from the page cache on one thread.</summary>
internal static class C3dTask
{
    private const int Frames = 180_000;
    private const int Points = 60;
    private const int Channels = 12;
    private const int Samples = 10;
    private const int Rounds = 5;

    /// <summary>First argument: a folder to work in; files of about 250 MB are made there once for each storage.</summary>
    public static void Run(string[] arguments)
    {
        foreach (var storage in C3dStorage.All)
        {
            var path = Path.Combine(arguments[0], string.Create(CultureInfo.InvariantCulture, $"bench-{storage.Order}-{(storage.IsReal ? "real" : "integer")}.c3d"));
            if (!File.Exists(path))
                Make(path, storage);
            var (wall, processor) = (0.0, 0.0);
            for (var round = 0; round < Rounds; round++)
            {
                var (elapsed, busy) = MegabytesPerSecond(path);
                (wall, processor) = (Math.Max(wall, elapsed), Math.Max(processor, busy));
            }

            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"c3d {storage.Order} {(storage.IsReal ? "real" : "integer")}: {new FileInfo(path).Length / 1e6:F0} MB, {wall:F0} MB/s, {processor:F0} MB for a second of processor time"));
        }
    }

    private static (double Wall, double Processor) MegabytesPerSecond(string path)
    {
        var clock = Stopwatch.StartNew();
        var busy = Process.GetCurrentProcess().TotalProcessorTime;
        var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read, 0);
        if (!C3dFile.Open(stream, path).Succeeded(out var file, out var problems))
            throw new InvalidOperationException(string.Join(Environment.NewLine, problems));
        using (file)
        {
            var sum = 0.0;
            foreach (var frames in file.Frames())
                sum += frames.Points.Span[0] + frames.Analog.Span[^1];
            if (double.IsNaN(sum))
                throw new InvalidOperationException("No sum came out.");
            var megabytes = file.FrameCount * ((Points * 4) + (Channels * Samples)) * (file.Storage.IsReal ? 4 : 2) / 1e6;
            return (megabytes / clock.Elapsed.TotalSeconds, megabytes / (Process.GetCurrentProcess().TotalProcessorTime - busy).TotalSeconds);
        }
    }

    private static void Make(string path, C3dStorage storage)
    {
        var wave = Enumerable.Range(0, Frames).Select(i => 1000 * Math.Sin(i / 100.0)).ToArray();
        var analog = Enumerable.Range(0, Frames * Samples).Select(i => 900 * Math.Cos(i / 300.0)).ToArray();
        using var stream = File.Create(path);
        C3dWriter.Write(stream, new C3dRecording
        {
            RateHz = 240,
            AnalogSamples = Samples,
            Points = [.. Enumerable.Range(0, Points).Select(i => new C3dPoint($"P{i}", wave, wave, wave))],
            Analog = [.. Enumerable.Range(0, Channels).Select(i => new C3dAnalog($"A{i}", "N", analog))],
        }, storage);
    }
}
