using SwingStudy.Bench;

// One task a process, as a user would run it: reading the file and writing the answer count. Each task lives in a file of its own.
var tasks = new Dictionary<string, Action<string[]>>(StringComparer.Ordinal)
{
    ["resampling"] = ResamplingTask.Run,
    ["curves"] = CurveTask.Run,
    ["tables"] = TableTask.Run,
    ["ingest-study"] = IngestTask.SetUp,
    ["ingest"] = IngestTask.Run,
    ["ingest-check"] = IngestTask.Check,
    ["c3d"] = C3dTask.Run,
    ["wave"] = WaveTask.Run,
    ["run-study"] = RunTask.SetUp,
    ["run-session"] = RunTask.AddExports,
};

if (args.Length < 2 || !tasks.TryGetValue(args[0], out var task))
{
    Console.Error.WriteLine($"usage: SwingStudy.Bench TASK FILE [THREADS [SEED]]   (tasks: {string.Join(", ", tasks.Keys)})");
    return 2;
}

task(args[1..]);
return 0;
