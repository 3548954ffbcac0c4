using System.Diagnostics;
using System.Globalization;
using SwingStudy.Statistics.Chance;
using SwingStudy.Statistics.Resampling;

namespace SwingStudy.Bench;

/// <summary>Hedges' g with its BCa interval (10,000 resamples) and a permutation p (10,000) for every subject and outcome of a long table.</summary>
internal static class ResamplingTask
{
    private const int Resamples = 10_000;
    private const int Subjects = 5;

    public static void Run(string[] args)
    {
        var threads = args.Length > 1 ? int.Parse(args[1], CultureInfo.InvariantCulture) : 1;
        var pairs = Read(args[0]);
        var chance = new Xoshiro256(args.Length > 2 ? ulong.Parse(args[2], CultureInfo.InvariantCulture) : 20260101);
        var clock = Stopwatch.StartNew();
        var results = new (double G, double Low, double High, double P)[pairs.Count];
        var work = pairs.ToArray();
        Parallel.For(0, work.Length, new ParallelOptions { MaxDegreeOfParallelism = threads }, i =>
        {
            var own = chance.Split(work[i].Key);
            double[] pre = [.. work[i].Value.Pre], post = [.. work[i].Value.Post];
            var effect = HedgesGBootstrap.Bca(pre, post, own.Split("bootstrap"), Resamples, largeSample: true);
            var test = TwoSampleMeanPermutation.MonteCarlo(pre, post, own.Split("permutation"), Resamples);
            results[i] = (effect.Value!.Value, effect.Interval!.Value.Low, effect.Interval!.Value.High, test.PTwoSided!.Value);
        });
        var (g, low, high, significant) = (results.Sum(r => r.G), results.Sum(r => r.Low), results.Sum(r => r.High), results.Count(r => r.P < 0.05));
        var n = pairs.Count;
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"pairs={n} ms_per_pair={clock.Elapsed.TotalMilliseconds / n:F3} mean g={g / n:F9} lo={low / n:F4} hi={high / n:F4} p<.05={significant}"));
    }

    // Columns subject,session,phase,trial,outcome,value; the first two sessions are compared with the last two.
    private static SortedDictionary<string, (List<double> Pre, List<double> Post)> Read(string file)
    {
        var pairs = new SortedDictionary<string, (List<double> Pre, List<double> Post)>(StringComparer.Ordinal);
        var subjects = new HashSet<string>(StringComparer.Ordinal);
        foreach (var line in File.ReadLines(file).Skip(1))
        {
            var cells = line.Split(',');
            subjects.Add(cells[0]);
            if (subjects.Count > Subjects)
                break;
            var session = int.Parse(cells[1], CultureInfo.InvariantCulture);
            if (session is > 2 and < 7)
                continue;
            var key = cells[0] + "/" + cells[4];
            if (!pairs.TryGetValue(key, out var pair))
                pairs[key] = pair = ([], []);
            (cells[2] == "pre" ? pair.Pre : pair.Post).Add(double.Parse(cells[5], CultureInfo.InvariantCulture));
        }

        return pairs;
    }
}
