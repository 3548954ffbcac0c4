using System.Globalization;
using SwingStudy.Calibrate;

// Usage: calibrate coverage [REPLICATES [SEED]] | calibrate borrowed [REPLICATES [SEED]] | calibrate mixed-model FILE.csv
switch (args)
{
    case ["coverage" or "borrowed", .. var rest] when rest.Length <= 2:
        var replicates = rest.Length > 0 ? int.Parse(rest[0], CultureInfo.InvariantCulture) : 2000;
        var seed = rest.Length > 1 ? ulong.Parse(rest[1], CultureInfo.InvariantCulture) : 20260101;
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"Made on {DateTime.UtcNow:yyyy-MM-dd} with seed {seed}."));
        Console.WriteLine();
        if (args[0] == "coverage")
        {
            Console.Write(CoverageStudy.Run(replicates, seed));
            Console.WriteLine();
        }

        Console.Write(BorrowedNoiseStudy.Run(replicates, seed));
        if (args[0] == "coverage")
        {
            Console.WriteLine();
            Console.Write(RandomizationStudy.Run(replicates, seed));
        }

        return 0;
    case ["mixed-model", var file]:
        Console.Write(MixedModelTiming.Run(file));
        return 0;
    default:
        Console.Error.WriteLine("usage: calibrate coverage|borrowed [REPLICATES [SEED]] | calibrate mixed-model FILE.csv");
        return 2;
}
