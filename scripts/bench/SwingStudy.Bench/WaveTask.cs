using System.Diagnostics;
using System.Globalization;
using SwingStudy.Domain.Curves;
using SwingStudy.Domain.Declarations;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Sources;
using SwingStudy.Domain.Variables;
using SwingStudy.Ingestion.Recordings;
using SwingStudy.Motion.Forces;
using SwingStudy.Motion.Geometry;
using SwingStudy.Motion.Signals;

namespace SwingStudy.Bench;

/// <summary>Reads recordings of two force plates as an intake does, low-passes all channels, and writes 26 features of each.</summary>
/// <remarks>
/// The low-pass takes its cut-off uncorrected, order 2 twice, as general filtering functions do: what other programs are compared with. What
/// the program measures anyway comes from its own signals and forces; the onset and the shares are the comparison's alone.
/// </remarks>
internal static class WaveTask
{
    private const string Heading =
        "trial,subject,session,bw,sd,fz_peak,t_fz_peak,fz_min,t_fz_min,rfd,t_rfd,t_onset,impulse,share_peak,z1,t_z1,z2,t_z2,fx,t_fx,fy,t_fy,copx_range,copy_range,imp_x,n_peaks,tp1,tp2,tp3";

    private const double StillSeconds = 0.499;
    private const double OnsetScatters = 5;
    private const int OnsetSamples = 20;
    private const double LeastProminenceN = 50;
    private static readonly LowPass Filter = new(50, Correction: PassCorrection.EachPass);
    private static readonly PlatePose AtOrigin = new(new Vector3D(0, 0, 0), 0);

    /// <summary>Arguments: mapping, folder of recordings, file to write, threads.</summary>
    public static void Run(string[] arguments)
    {
        var clock = Stopwatch.StartNew();
        var mapping = Required.Of(MappingReader.Read(arguments[0], new VariableDictionary("none", new Version(1, 0), [], Sha256.Of(""))));
        var files = Directory.GetFiles(arguments[1]);
        Array.Sort(files, StringComparer.Ordinal);
        var rows = new string[files.Length];
        var next = -1;
        void Work()
        {
            while (Interlocked.Increment(ref next) is var i && i < files.Length)
                rows[i] = RowOf(files[i], mapping);
        }

        var others = new Thread[int.Parse(arguments[3], CultureInfo.InvariantCulture) - 1];
        for (var i = 0; i < others.Length; i++)
            (others[i] = new Thread(Work)).Start();
        Work();
        foreach (var thread in others)
            thread.Join();
        File.WriteAllLines(arguments[2], [Heading, .. rows]);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"files={rows.Length} s={clock.Elapsed.TotalSeconds:F3} cpu_s={Environment.CpuUsage.TotalTime.TotalSeconds:F3}"));
    }

    private static string RowOf(string path, SourceMapping mapping)
    {
        var name = Path.GetFileName(path);
        using var reader = Required.Of(RecordingReaders.Open(path, new RecordingRequest { Mapping = mapping, File = name, Name = name }));
        var recording = reader.Read().Single();
        if (reader.Problems.Count > 0 || reader.Rejects.Count > 0 || !reader.Counts.Balances)
            throw new InvalidOperationException($"{name} was not read whole: {string.Join(Environment.NewLine, reader.Problems)}");
        var session = reader.Preamble.Single(line => line.Text.StartsWith("Session\t", StringComparison.Ordinal)).Text["Session\t".Length..];
        return string.Create(CultureInfo.InvariantCulture, $"{recording.Sequence},{recording.Alias},{session},{string.Join(',', Array.ConvertAll(Features(recording), Text))}");
    }

    private static double[] Features(Recording recording)
    {
        var curves = recording.Curves.ToDictionary(curve => curve.Channel, curve => curve, StringComparer.Ordinal);
        var rate = curves["lead_force_y"].RateHz;
        var raw = new List<double[]>();
        foreach (var foot in (string[])["lead", "trail"])
        {
            foreach (var quantity in (string[])["force", "moment"])
            {
                foreach (var letter in "xyz")
                    raw.Add(curves[Channels.OfPlate(foot, quantity, letter)].Values);
            }
        }

        var smooth = Filter.Apply(raw, rate);
        PlateLoads first = new(smooth[0], smooth[1], smooth[2], smooth[3], smooth[4], smooth[5]), second = new(smooth[6], smooth[7], smooth[8], smooth[9], smooth[10], smooth[11]);
        var axis = new TimeAxis(rate, 0, first.Count);

        // The laboratory's up is the plates' z; its right is the plates' -y.
        var reaction = GroundReaction.Of([(first, AtOrigin), (second, AtOrigin)], leastForceN: 0);
        var vertical = reaction.ForceY;
        var right = Peak.Lowest(reaction.ForceZ, 0, reaction.Count - 1)!.Value;
        var still = QuietStanding.Stillest(vertical, axis, StillSeconds, 0, StillSeconds)!;
        var peak = Peak.Highest(vertical)!.Value;
        var least = Peak.Lowest(vertical, 0, peak.Index)!.Value;
        var rise = Peak.Highest(Difference.CentralPlainEnds(vertical, rate))!.Value;
        var onset = Onset(vertical, still);
        var above = new double[vertical.Length];
        for (var i = 0; i < above.Length; i++)
            above[i] = vertical[i] - still.WeightN;
        var peaks = ProminentPeak.In(vertical, LeastProminenceN);
        return
        [
            still.WeightN, still.ScatterN, .. Top(peak), .. Top(least), .. Top(rise),
            onset < 0 ? double.NaN : axis.TimeOf(onset),
            onset >= 0 && onset < peak.Index ? Span.Integral(above, axis, axis.TimeOf(onset), axis.TimeOf(peak.Index)) : double.NaN,
            first.ForceY[peak.Index] / vertical[peak.Index],
            .. Highest(first.ForceY), .. Highest(second.ForceY), .. Highest(reaction.ForceX), -right.Sample, axis.TimeOf(right.Index),
            Range(reaction.CentreX), Range(reaction.CentreZ),
            Span.Integral(reaction.ForceX, axis, 0, axis.LastTimeS),
            peaks.Count, .. Foremost(peaks, axis),
        ];

        double[] Highest(double[] values) => Top(Peak.Highest(values)!.Value);
        double[] Top(Peak found) => [found.Sample, axis.TimeOf(found.Index)];
    }

    /// <summary>First sample of the first 20 in a row that lie more than five standard deviations off the still level; -1 where there are none.</summary>
    private static int Onset(ReadOnlySpan<double> values, QuietStanding still)
    {
        var run = 0;
        for (var i = 0; i < values.Length; i++)
        {
            run = Math.Abs(values[i] - still.WeightN) > OnsetScatters * still.ScatterN ? run + 1 : 0;
            if (run == OnsetSamples)
                return i - OnsetSamples + 1;
        }

        return -1;
    }

    /// <summary>Times of the most prominent peaks, in order of time; missing where there are fewer.</summary>
    private static double[] Foremost(IReadOnlyList<ProminentPeak> peaks, TimeAxis axis)
    {
        double[] times = [double.NaN, double.NaN, double.NaN];
        var count = 0;
        foreach (var peak in peaks)
        {
            var before = 0;
            foreach (var other in peaks)
                before += other.Prominence > peak.Prominence || (other.Prominence == peak.Prominence && other.Index < peak.Index) ? 1 : 0;
            if (before < times.Length)
                times[count++] = axis.TimeOf(peak.Index);
        }

        return times;
    }

    private static double Range(ReadOnlySpan<double> values) => Peak.Highest(values)!.Value.Sample - Peak.Lowest(values, 0, values.Length - 1)!.Value.Sample;

    private static string Text(double value) => double.IsNaN(value) ? "" : value.ToString("R", CultureInfo.InvariantCulture);
}
