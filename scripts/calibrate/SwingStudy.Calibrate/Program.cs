using SwingStudy.Calibrate;

// Usage: calibrate coverage [REPLICATES] | calibrate mixed-model FILE.csv
switch (args)
{
    case ["coverage", .. var rest]:
        Console.Write(CoverageStudy.Run(rest.Length > 0 ? int.Parse(rest[0], System.Globalization.CultureInfo.InvariantCulture) : 2000));
        return 0;
    case ["mixed-model", var file]:
        Console.Write(MixedModelTiming.Run(file));
        return 0;
    default:
        Console.Error.WriteLine("usage: calibrate coverage [REPLICATES] | calibrate mixed-model FILE.csv");
        return 2;
}
