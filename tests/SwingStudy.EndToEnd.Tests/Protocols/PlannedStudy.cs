using System.Text.Json;
using SwingStudy.EndToEnd.Tests.Running;

namespace SwingStudy.EndToEnd.Tests.Protocols;

/// <summary>A study whose phases, contrasts and cue have names that no other text of the program holds.</summary>
internal sealed class PlannedStudy : IDisposable
{
    /// <summary>Names that a blind analyst must not see.</summary>
    public static readonly string[] Telling = ["quiet-weeks", "shove-weeks", "weeks-later", "shove-effect", "shove-kept", "shove-early"];

    private const string Protocol = """
        name: small
        version: 1.0.0
        title: Small
        question: Does it help?
        design: pre-post
        phases:
          - { name: quiet-weeks, role: baseline, minimum_sessions: 2, minimum_swings: 5, why: Reason. }
          - { name: shove-weeks, role: intervention, minimum_sessions: 2, minimum_swings: 5, cue: shove-early, why: Reason. }
          - { name: weeks-later, role: follow-up, minimum_sessions: 1, minimum_swings: 5, days_after: 14, why: Reason. }
        randomization: { kind: phase-start, earliest_session: 3, latest_session: 6, seed: 5, why: Reason. }
        fixed_conditions: [club, surface]
        eligibility: { minimum_age: 18, age_of_majority: 18, why: Reason. }
        outcomes:
          - { variable: club_head_speed, role: primary, smallest_worthwhile: { amount: 2, unit: mph, basis: stated, reason: Reason. } }
        contrasts:
          - { name: shove-effect, from: quiet-weeks, to: shove-weeks }
          - { name: shove-kept, from: quiet-weeks, to: weeks-later }
        blinding: { analyst: masked, how: Whoever analyses sees codes. }
        stop_rules:
          - { variable: pain_nrs, at_least: 4, why: Reason. }
        cautions: [Local law comes first.]
        """;

    private readonly TestStudy _study = new(SensorMapping.With());

    public PlannedStudy() => Write(Protocol);

    public string Root => _study.Root;

    public string PathOf(string relative) => _study.PathOf(relative);

    public Finished Run(params string[] arguments) => _study.Run(arguments);

    /// <summary>Puts a text into the inbox.</summary>
    public string Drop(string name, string text) => _study.Drop(name, text);

    /// <summary>Runs a command that a rule must refuse, and gives the problem.</summary>
    public JsonElement Refused(params string[] arguments)
    {
        var problem = Run([.. arguments, "--json"]).Expect(4).Json.GetProperty("problems")[0];
        Assert.NotEmpty(problem.GetProperty("mend").GetString()!);
        return problem;
    }

    /// <summary>Writes protocol.yaml.</summary>
    public void Write(string text) => File.WriteAllText(PathOf("protocol.yaml"), text);

    /// <summary>Edits protocol.yaml by hand.</summary>
    public void Edit(string from, string to)
    {
        var text = File.ReadAllText(PathOf("protocol.yaml"));
        Assert.Contains(from, text, StringComparison.Ordinal);
        Write(text.Replace(from, to, StringComparison.Ordinal));
    }

    /// <summary>Raises the version of protocol.yaml, as an amendment must.</summary>
    public void Raise(string to) => Write(System.Text.RegularExpressions.Regex.Replace(File.ReadAllText(PathOf("protocol.yaml")), "version: [0-9.]+", $"version: {to}"));

    /// <summary>Takes in two sessions of each of two phases of P01 and brings all up to date.</summary>
    public void Measure()
    {
        foreach (var (day, phase, first) in new[] { ("2026-05-04", "quiet-weeks", 41.0), ("2026-05-06", "quiet-weeks", 41.3), ("2026-05-11", "shove-weeks", 43.0), ("2026-05-13", "shove-weeks", 43.4) })
        {
            string[] cue = phase == "shove-weeks" ? ["--cue", "shove-early"] : [];
            Run(["session", "add", "P01", "--start", $"{day} 09:59", "--phase", phase, .. cue]).Expect(0);
            _study.Drop($"bay/{day}.csv", SensorMapping.File(8, day, first));
        }

        Run("ingest").Expect(0);
        Run("run").Expect(0);
    }

    public void Dispose() => _study.Dispose();
}
