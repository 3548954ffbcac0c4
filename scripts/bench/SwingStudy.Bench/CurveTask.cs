using System.Diagnostics;
using System.Globalization;
using SwingStudy.Statistics.Chance;
using SwingStudy.Statistics.Curves;

namespace SwingStudy.Bench;

/// <summary>Largest |t| over the curve and its permutation threshold, 10,000 relabellings of two sets of curves.</summary>
internal static class CurveTask
{
    public static void Run(string[] args)
    {
        var threads = args.Length > 1 ? int.Parse(args[1], CultureInfo.InvariantCulture) : 2;
        var (pre, post) = Read(args[0]);
        var clock = Stopwatch.StartNew();
        var test = CurveTest.TwoSample(post, pre, 0.05, new Xoshiro256(args.Length > 2 ? ulong.Parse(args[2], CultureInfo.InvariantCulture) : 20260101), 10_000, threads);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"obs_max={test.LargestT:F9} threshold95={test.Threshold:F5} p={test.P:F5} seconds={clock.Elapsed.TotalSeconds:F3}"));
    }

    // Columns trial,phase,v0,v1,…: one curve a row.
    private static (List<double[]> Pre, List<double[]> Post) Read(string file)
    {
        var sets = (Pre: new List<double[]>(), Post: new List<double[]>());
        ReadOnlySpan<byte> text = File.ReadAllBytes(file);
        text = text[(text.IndexOf((byte)'\n') + 1)..];
        var nodes = 0;
        while (!text.IsEmpty)
        {
            var end = text.IndexOf((byte)'\n');
            var row = end < 0 ? text : text[..end];
            text = end < 0 ? [] : text[(end + 1)..];
            row = row[(row.IndexOf((byte)',') + 1)..];
            var comma = row.IndexOf((byte)',');
            var isPost = row[..comma].SequenceEqual("post"u8);
            row = row[(comma + 1)..];
            if (nodes == 0)
                nodes = row.Count((byte)',') + 1;
            var curve = new double[nodes];
            for (var node = 0; node < nodes; node++)
            {
                comma = row.IndexOf((byte)',');
                curve[node] = double.Parse(comma < 0 ? row.TrimEnd((byte)'\r') : row[..comma], CultureInfo.InvariantCulture);
                row = row[(comma + 1)..];
            }

            (isPost ? sets.Post : sets.Pre).Add(curve);
        }

        return sets;
    }
}
