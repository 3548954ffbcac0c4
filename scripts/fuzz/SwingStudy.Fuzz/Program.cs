using System.Diagnostics;
using System.Globalization;
using SwingStudy.Fuzz;
using SwingStudy.Statistics.Chance;

// Usage: SwingStudy.Fuzz EXECUTIONS MINUTES SEED [FAILURES]: mutated files go through every reader until one of the two is reached.
const long MostBytes = 256L << 20;
const double MostSeconds = 5;
var (executions, minutes, seed) = (long.Parse(args[0], CultureInfo.InvariantCulture), double.Parse(args[1], CultureInfo.InvariantCulture), ulong.Parse(args[2], CultureInfo.InvariantCulture));
var failures = args.Length > 3 ? args[3] : Path.GetTempPath();
var chance = new Xoshiro256(seed);
var mutation = new Mutation(chance);
Target[] wheel = [.. Targets.All.SelectMany(target => Enumerable.Repeat(target, target.Weight))];
var counts = Targets.All.ToDictionary(target => target.Name, _ => 0L);
var (failed, largest, slowest) = (0, 0L, 0.0);
var clock = Stopwatch.StartNew();
long done = 0;
byte[] current = [];
var since = 0.0;
using var self = Process.GetCurrentProcess();

// A reader that hangs is told by a second thread, with the file that did it.
using var watch = new Timer(_ =>
{
    if (Busy() - Volatile.Read(ref since) < 60)
        return;
    Report("hangs", current);
    Environment.Exit(1);
}, null, TimeSpan.FromSeconds(10), TimeSpan.FromSeconds(10));

for (; done < executions && clock.Elapsed.TotalMinutes < minutes && failed < 20; done++)
{
    var target = wheel[chance.NextIndex(wheel.Length)];
    var bytes = mutation.Of(target.Seeds[chance.NextIndex(target.Seeds.Count)], target.Seeds[chance.NextIndex(target.Seeds.Count)]);
    counts[target.Name]++;
    current = bytes;
    Volatile.Write(ref since, Busy());
    var before = GC.GetAllocatedBytesForCurrentThread();
    try
    {
        target.Read(bytes);
    }
#pragma warning disable CA1031 // Any exception that escapes a reader is what is looked for.
    catch (Exception e)
#pragma warning restore CA1031
    {
        Report($"{target.Name}: {e}", bytes);
    }

    var allocated = GC.GetAllocatedBytesForCurrentThread() - before;
    var seconds = Busy() - since;
    (largest, slowest) = (Math.Max(largest, allocated), Math.Max(slowest, seconds));
    if (allocated > MostBytes)
        Report($"{target.Name}: {allocated} bytes allocated", bytes);
    if (seconds > MostSeconds)
        Report($"{target.Name}: {seconds} s", bytes);
}

Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"seed {seed}: {done} executions in {clock.Elapsed.TotalMinutes:F1} minutes ({done / clock.Elapsed.TotalSeconds:F0} a second), {failed} failures"));
Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"most memory asked for by one execution {largest / 1048576.0:F1} MiB (limit 256), slowest {slowest:F2} s of processor time (limit {MostSeconds:F0})"));
foreach (var (name, count) in counts)
    Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  {count,10}  {name}"));
return failed == 0 ? 0 : 1;

// Seconds of processor time: a machine that is busy with other things makes no reader slow.
double Busy()
{
    self.Refresh();
    return self.TotalProcessorTime.TotalSeconds;
}

void Report(string what, byte[] bytes)
{
    failed++;
    var path = Path.Combine(failures, string.Create(CultureInfo.InvariantCulture, $"failure-{seed}-{done}.bin"));
    File.WriteAllBytes(path, bytes);
    Console.Error.WriteLine($"{path}: {what}");
}
