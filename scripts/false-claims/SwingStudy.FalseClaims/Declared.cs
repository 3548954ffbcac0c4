using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Protocols;
using SwingStudy.Domain.Sources;
using SwingStudy.Domain.Studies;
using SwingStudy.Domain.Variables;

namespace SwingStudy.FalseClaims;

/// <summary>The declarations of the simulated studies: one primary outcome in two planned contrasts.</summary>
internal static class Declared
{
    public static VariableDictionary Dictionary { get; } = new("simulated", new Version(1, 0, 0),
    [
        new()
        {
            Name = "club_head_speed", Title = "Club head speed", Description = "", Type = VariableType.Number, Group = "simulated", Unit = "m/s", DisplayUnit = "[mi_i]/h",
            Minimum = 3, Maximum = 75, Better = Better.Higher,
        },
        Text("club"), Text("ball"), Text("surface"),
    ], Sha256.Of("dictionary"));

    /// <summary>The study, with or without a stated smallest worthwhile change.</summary>
    public static StudySetup Setup(bool statesWorthwhile) => new(
        new StudyFolder("/nowhere"),
        new StudyDeclaration { Name = "simulated", Zone = "Europe/Lisbon", PreferredSources = ["bay", "hall"] },
        Dictionary,
        new Protocol
        {
            Name = "simulated",
            Version = new Version(1, 0, 0),
            Title = "Simulated",
            Question = "Does the cue change club head speed?",
            Design = DesignKind.PrePost,
            Phases = [new("baseline", PhaseRole.Baseline, 1, 5, null, null, ""), new("cue", PhaseRole.Intervention, 1, 5, null, "cue", ""), new("later", PhaseRole.FollowUp, 1, 5, 14, null, "")],
            Eligibility = new Eligibility(18, false, 18, []),
            FixedConditions = ["club", "ball", "surface"],
            Outcomes = [new("club_head_speed", OutcomeRole.Primary, statesWorthwhile ? new WorthwhileChange(Scenario.Worthwhile, "stated", "") : null, [])],
            Contrasts = [new("with-cue", "baseline", "cue"), new("kept", "baseline", "later")],
            File = "protocol.yaml",
            Hash = Sha256.Of("protocol"),
        },
        [Source("bay"), Source("hall")]);

    private static Variable Text(string name) => new() { Name = name, Title = name, Description = "", Type = VariableType.Text, Group = "simulated" };

    private static SourceMapping Source(string name) => new()
    {
        Source = name,
        Title = name,
        Device = name,
        Rows = RowMeaning.Swings,
        Reader = ReaderKind.Delimited,
        Files = ".*",
        Time = null!,
        Values = new Dictionary<string, FieldSource> { ["club_head_speed"] = new() { Column = "Speed" } },
        File = name,
        Hash = Sha256.Of(name),
    };
}
