using SwingStudy.Statistics.Catalogue;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.Tests.Catalogue;

/// <summary>
/// The house rule for every statistic of the catalogue: whatever the data, the answer is a number within its bounds or 'undefined' with a
/// reason; what is not a number is refused by name. A new statistic is covered by being in the catalogue.
/// </summary>
public class EveryStatisticTests
{
    public static TheoryData<string> Names => [.. StatisticCatalogue.All.Select(d => d.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void DegenerateDataGiveANumberWithinBoundsOrAReason(string name)
    {
        var definition = StatisticCatalogue.Find(name)!;
        foreach (var (label, values) in DegenerateValues())
        {
            foreach (var (layout, input) in Layouts(definition, values))
                CheckAnswers(definition, $"{label}, {layout}", definition.Results(input));
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void ValuesThatAreNotFiniteOrBeyondAnyMeasurementAreRefused(string name)
    {
        var definition = StatisticCatalogue.Find(name)!;
        foreach (var bad in new[] { double.NaN, double.PositiveInfinity, double.NegativeInfinity, double.MaxValue, -1e80 })
        {
            var input = Layouts(definition, [1, 2, 3, bad, 5, 6, 7, 8])[0].Input;
            Assert.Throws<ArgumentException>(() => definition.Compute(input));
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void OrdinaryDataGiveANumber(string name)
    {
        var definition = StatisticCatalogue.Find(name)!;
        var values = Enumerable.Range(0, 48).Select(i => 40 + (3 * Math.Sin(i * 1.7)) + (i % 2) + (0.3 * (i % 7))).ToArray();
        double[] shares = [.. values.Select(value => value - Math.Floor(value))];
        var answers = Layouts(definition, values).Concat(Layouts(definition, shares)).Select(l => (l.Label, Answers: definition.Results(l.Input))).ToList();
        foreach (var (label, answer) in answers)
            CheckAnswers(definition, label, answer);
        Assert.True(answers.Exists(a => a.Answers[0].Estimate.IsDefined), $"{name} is undefined in every layout: {answers[0].Answers[0].Estimate.Undefined}");
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void AMissingColumnIsNamed(string name)
    {
        var definition = StatisticCatalogue.Find(name)!;
        if (definition.Needs is InputColumns.Value or InputColumns.None)
            return;
        var thrown = Assert.Throws<ArgumentException>(() => definition.Compute(new TidyInput { Values = [1, 2, 3] }));
        Assert.Contains("missing", thrown.Message, StringComparison.Ordinal);
    }

    private static IEnumerable<(string Label, double[] Values)> DegenerateValues() =>
    [
        ("no value", []),
        ("one value", [3.5]),
        ("two values", [3.5, 4.5]),
        ("two equal values", [2, 2]),
        ("three values", [1, 2, 4]),
        ("four values", [1, 2, 4, 3]),
        ("constant", [.. Enumerable.Repeat(7.25, 24)]),
        ("zeros", [.. Enumerable.Repeat(0.0, 24)]),
        ("zeros of both signs", [.. Enumerable.Range(0, 24).Select(i => i % 3 == 0 ? -0.0 : 0.0)]),
        ("one outlier", [.. Enumerable.Range(0, 24).Select(i => i == 5 ? 1e6 : 1.0)]),
        ("offset of a billion", [.. Enumerable.Range(0, 24).Select(i => 1e9 + Math.Sin(i * 2.3))]),
        ("negative", [.. Enumerable.Range(0, 24).Select(i => -50 + Math.Sin(i * 2.3))]),
        ("huge", [.. Enumerable.Range(0, 24).Select(i => 1e74 * (1 + (0.1 * Math.Sin(i * 2.3))))]),
        ("largest of both signs", [.. Enumerable.Range(0, 24).Select(i => i % 2 == 0 ? 1e75 : -1e75)]),
        ("subnormal", [.. Enumerable.Range(0, 24).Select(i => (1 + (i % 5)) * double.Epsilon)]),
        ("tiny", [.. Enumerable.Range(0, 24).Select(i => 1e-200 * (1 + (0.1 * Math.Sin(i * 2.3))))]),
        ("nearly constant", [.. Enumerable.Range(0, 24).Select(i => i % 4 == 0 ? Math.BitIncrement(5.0) : 5.0)]),
        ("separate conditions", [.. Enumerable.Range(0, 24).Select(i => i < 12 ? i * 0.1 : 1000 + (i * 0.1))]),
    ];

    /// <summary>Ways in which the same values can be a tidy table.</summary>
    private static List<(string Label, TidyInput Input)> Layouts(StatisticDefinition definition, double[] values)
    {
        var n = values.Length;
        var rows = Enumerable.Range(0, n).ToArray();
        TidyInput Table(Func<int, string> condition, Func<int, string> subject, Func<int, string> session) => new()
        {
            Values = values,
            Conditions = [.. rows.Select(condition)],
            Subjects = [.. rows.Select(subject)],
            Sessions = [.. rows.Select(session)],
            Predictors = [.. rows.Select(i => (double)i)],
            Variances = [.. rows.Select(i => 0.5 + (0.1 * (i % 3)))],
            Settings = Settings(definition),
        };
        return
        [
            ("pairs", Table(i => i % 2 == 0 ? "A" : "B", i => $"P{i / 2}", i => $"S{i % 2}")),
            ("two blocks of one subject", Table(i => i < n / 2 ? "A" : "B", _ => "P1", i => $"S{i * 4 / Math.Max(1, n)}")),
            ("subjects by three conditions", Table(i => $"C{i % 3}", i => $"P{i / 3}", i => $"S{i % 3}")),
            ("several subjects in sessions of several values", Table(i => i % 4 < 2 ? "A" : "B", i => $"P{i / 8}", i => $"S{i % 8 / 2}")),
            ("several pairs of a subject", Table(i => i % 2 == 0 ? "A" : "B", i => $"P{i / 8}", i => $"S{i % 8 / 2}")),
            ("curves of four nodes", Table(i => i / 4 % 2 == 0 ? "A" : "B", i => $"P{i / 8}", _ => "S1") with { Predictors = [.. rows.Select(i => (double)(i % 4))] }),
            ("one condition", Table(_ => "A", i => $"P{i / 4}", i => $"S{i % 4}")),
            ("subjects that change once, each at its own time", Table(i => i % 12 < 5 + (i / 12 % 3) ? "A" : "B", i => $"P{i / 12}", i => $"S{i % 12}")
                with { Predictors = [.. rows.Select(i => (double)(i % 12))] }),
            ("first condition of one value", Table(i => i == 0 ? "A" : "B", i => $"P{i}", _ => "S1")),
        ];
    }

    /// <summary>What must be given, and less work than usual where chance is drawn.</summary>
    private static Dictionary<string, double> Settings(StatisticDefinition definition)
    {
        var settings = definition.Settings.Where(setting => setting.IsNeeded).ToDictionary(setting => setting.Name, setting => setting.Example!.Value);
        settings["resamples"] = 199;
        settings["replications"] = 20;
        return settings;
    }

    private static void CheckAnswers(StatisticDefinition definition, string data, IReadOnlyList<NamedEstimate> answers)
    {
        Assert.NotEmpty(answers);
        var main = answers[0].Estimate;
        Assert.True(
            main.Value is not { } value || (value >= definition.LowerBound && value <= definition.UpperBound), $"{definition.Name} on {data}: {main}");
        Assert.All(answers, answer => CheckAnswer(definition, $"{data}, {answer.Quantity}", answer.Estimate));
    }

    private static void CheckAnswer(StatisticDefinition definition, string data, Estimate answer)
    {
        var what = $"{definition.Name} on {data}: {answer}";
        Assert.True(answer.Method == definition.Name, what);
        if (answer.Value is not { } value)
        {
            Assert.False(string.IsNullOrWhiteSpace(answer.Undefined), what);
            return;
        }

        Assert.Null(answer.Undefined);
        Assert.True(double.IsFinite(value), what);
        Assert.True(answer.StandardError is null or (>= 0 and < double.PositiveInfinity), what);
        Assert.True(answer.P is null or (>= 0 and <= 1), what);
        Assert.True(answer.DegreesOfFreedom is null or >= 0, what);
        if (answer.Interval is { } interval)
            Assert.True(interval.Low <= interval.High, what);
    }
}
