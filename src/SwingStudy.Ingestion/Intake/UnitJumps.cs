using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Tables;
using SwingStudy.Ingestion.Mapping;

namespace SwingStudy.Ingestion.Intake;

/// <summary>Notices a file whose values of a variable lie away from all that the same player and source gave before, by the factor between two units.</summary>
internal sealed class UnitJumps(EarlierCaptures earlier)
{
    private const int FewestValues = 3;
    private const double Tolerance = 0.07;

    /// <summary>Factors near 1 are within reach of coaching; they are mentioned, and do not hold a file.</summary>
    private const double HoldingFactor = 1.5;

    /// <summary>Factors between two units in use, with the canonical units of the variables that could be meant.</summary>
    private static readonly (double Factor, string Units, string[] Of)[] Factors =
    [
        (2.2369, "mph and m/s", ["m/s"]), (3.6, "km/h and m/s", ["m/s"]), (1.0936, "yd and m", ["m"]), (3.2808, "ft and m", ["m"]), (25.4, "in and mm", ["mm"]),
        (57.296, "degrees and radians", ["deg", "deg/s"]), (2.2046, "lb and kg", ["kg"]), (4.4482, "pounds-force and newtons", ["N"]),
        (9.5493, "turns a minute and rad/s", ["{rev}/min"]),
    ];

    private readonly Dictionary<(ParticipantId, string), Dictionary<string, Spread>> _usual = [];

    /// <summary>What is suspicious: problems that hold the file, and remarks.</summary>
    public (List<Problem> Problems, List<Problem> Remarks) Check(MappedFile file, SheetShape shape, ParticipantId participant, IReadOnlyList<int> rows)
    {
        var (problems, remarks) = (new List<Problem>(), new List<Problem>());
        if (rows.Count < FewestValues)
            return (problems, remarks);
        var usual = Usual(file, participant);
        for (var i = 0; i < file.Plan.Numbers.Count; i++)
        {
            var column = file.Plan.Numbers[i];
            if (column.Variable.Unit is null or "1" || !usual.TryGetValue(column.Variable.Name, out var before) || Spread.Of(Magnitudes(file, i, rows)) is not { } now)
                continue;
            if (now.Low <= before.High && before.Low <= now.High)
                continue;
            var ratio = now.Median / before.Median;
            foreach (var (factor, units, of) in Factors)
            {
                if (!of.Contains(column.Variable.Unit))
                    continue;
                if (Math.Abs((ratio / factor) - 1) > Tolerance && Math.Abs((ratio * factor) - 1) > Tolerance)
                    continue;
                var holds = factor > HoldingFactor;
                if (!holds && Math.Abs(Math.Max(ratio, 1 / ratio) - factor) > 0.02)
                    continue;
                (holds ? problems : remarks).Add(MappingMessages.UnitJump(shape, column.Place.Name, column.Variable, factor, units, now.Median, before.Median));
                break;
            }
        }

        return (problems, remarks);
    }

    /// <summary>Forgets what is usual for a player and source, after a file of theirs was taken.</summary>
    public void Forget(ParticipantId participant, string source) => _usual.Remove((participant, source));

    private static IEnumerable<double> Magnitudes(MappedFile file, int column, IReadOnlyList<int> rows) => rows.Select(row => Math.Abs(file.Number(column, row)));

    private Dictionary<string, Spread> Usual(MappedFile file, ParticipantId participant)
    {
        var source = file.Plan.Mapping.Source;
        if (_usual.TryGetValue((participant, source), out var usual))
            return usual;
        string[] variables = [.. file.Plan.Numbers.Where(column => column.Variable.Type == Domain.Variables.VariableType.Number).Select(column => column.Variable.Name)];
        var values = variables.ToDictionary(variable => variable, _ => new List<double>(), StringComparer.Ordinal);
        foreach (var rows in earlier.Values(participant, variables))
        {
            var sources = rows.Texts("source");
            foreach (var variable in variables)
            {
                var numbers = ((NumberColumn)rows[variable]).Values;
                for (var row = 0; row < rows.Count; row++)
                {
                    if (sources[row] == source)
                        values[variable].Add(Math.Abs(numbers[row]));
                }
            }
        }

        usual = values.Select(pair => (pair.Key, Spread: Spread.Of(pair.Value))).Where(pair => pair.Spread is not null).ToDictionary(pair => pair.Key, pair => pair.Spread!, StringComparer.Ordinal);
        _usual.Add((participant, source), usual);
        return usual;
    }

    /// <summary>The middle of some magnitudes: median, and the limits that leave a tenth outside at either end.</summary>
    private sealed record Spread(double Low, double Median, double High)
    {
        public static Spread? Of(IEnumerable<double> magnitudes)
        {
            var sorted = magnitudes.Where(double.IsFinite).Order().ToArray();
            if (sorted.Length < FewestValues || sorted[sorted.Length / 2] == 0)
                return null;
            var cut = sorted.Length / 10;
            return new Spread(sorted[cut], sorted[sorted.Length / 2], sorted[^(cut + 1)]);
        }
    }
}
