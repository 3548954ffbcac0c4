using System.Globalization;
using SwingStudy.FalseClaims;
using SwingStudy.Statistics.Chance;

// Usage: false-claims [STUDIES] [SEED]; exit code 1 when a promise is broken.
var studies = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 1000;
var seed = args.Length > 1 ? ulong.Parse(args[1], CultureInfo.InvariantCulture) : 20260101;
const double MostFalse = 0.05, LeastFound = 0.8;
const double Effect = 2 * Scenario.Worthwhile;
var scenarios = Scenario.All;
var none = new VerdictCounts[scenarios.Count];
var twice = new VerdictCounts[scenarios.Count];
Parallel.For(0, 2 * scenarios.Count, new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount }, job =>
{
    var (scenario, hasEffect) = (scenarios[job / 2], job % 2 == 1);
    var counts = new VerdictCounts();
    var chain = new StageChain(scenario.StatesWorthwhile);
    var chance = new Xoshiro256(seed).Split(scenario.Name).Split(hasEffect ? "effect" : "none");
    for (var i = 0; i < studies; i++)
    {
        var (swings, captures, links) = new SimulatedStudy(scenario, chance.Split($"study {i}"), hasEffect ? Effect : 0).Draw();
        counts.Add(chain.Findings(swings, captures, links));
    }

    (hasEffect ? twice : none)[job / 2] = counts;
});

var broken = new List<string>();
Console.WriteLine("| scenario | contrasts | supported | suggestive | not shown | cannot tell | study supported | with effect: supported | with effect: supported or suggestive | with effect: study supported |");
Console.WriteLine("|---|---|---|---|---|---|---|---|---|---|");
for (var i = 0; i < scenarios.Count; i++)
{
    var (scenario, zero, effect) = (scenarios[i], none[i], twice[i]);
    var found = effect.Players("supported", "suggestive");
    Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
        $"| {scenario.Name}{(scenario.MustFind ? " *" : "")} | {zero.Contrasts} | {Percent(zero.Players("supported"))} | {Percent(zero.Players("suggestive"))} | {Percent(zero.Players("not shown"))} | {Percent(zero.Players("cannot tell"))} | {Percent(zero.Studies("supported"))} | {Percent(effect.Players("supported"))} | {Percent(found)} | {Percent(effect.Studies("supported"))} |"));
    if (Math.Max(zero.Players("supported"), zero.Studies("supported")) > MostFalse)
        broken.Add($"{scenario.Name}: more than 5 % false claims");
    if (scenario.MustFind && found < LeastFound)
        broken.Add($"{scenario.Name}: fewer than 80 % found");
}

Console.WriteLine();
Console.WriteLine(broken.Count == 0 ? "All promises are kept." : "BROKEN: " + string.Join("; ", broken));
return broken.Count == 0 ? 0 : 1;

static string Percent(double share) => (100 * share).ToString("F1", CultureInfo.InvariantCulture);
