using SwingStudy.Domain.Identifiers;

namespace SwingStudy.Domain.Protocols;

/// <summary>The plan of a study: question, design, phases, outcomes, rules, analysis.</summary>
public sealed record Protocol
{
    /// <summary>Kebab-case name.</summary>
    public required string Name { get; init; }

    /// <summary>Semantic version.</summary>
    public required Version Version { get; init; }

    /// <summary>Title for people.</summary>
    public required string Title { get; init; }

    /// <summary>The question that the study answers.</summary>
    public required string Question { get; init; }

    /// <summary>The design.</summary>
    public required DesignKind Design { get; init; }

    /// <summary>Phases in their order.</summary>
    public required IReadOnlyList<Phase> Phases { get; init; }

    /// <summary>What chance decides; null: nothing, and the study says "not randomized".</summary>
    public Randomization? Randomization { get; init; }

    /// <summary>Variables that must stay the same over compared phases: club, ball, surface.</summary>
    public IReadOnlyList<string> FixedConditions { get; init; } = [];

    /// <summary>Who may take part.</summary>
    public required Eligibility Eligibility { get; init; }

    /// <summary>Players the study plans for; null where it takes whoever comes.</summary>
    public PlannedPlayers? Players { get; init; }

    /// <summary>The published edition of design standards that the points a phase are held to.</summary>
    public DesignStandard Standard { get; init; } = DesignStandard.Default;

    /// <summary>Outcomes, primary first.</summary>
    public required IReadOnlyList<OutcomeMeasure> Outcomes { get; init; }

    /// <summary>Planned comparisons.</summary>
    public required IReadOnlyList<Contrast> Contrasts { get; init; }

    /// <summary>Channels whose whole curves are compared; none unless declared.</summary>
    public IReadOnlyList<CurvePlan> Curves { get; init; } = [];

    /// <summary>Screening rules in their order.</summary>
    public IReadOnlyList<ScreeningRule> Screening { get; init; } = [];

    /// <summary>How curves are processed.</summary>
    public SignalPlan Signals { get; init; } = new();

    /// <summary>How effects are computed.</summary>
    public AnalysisPlan Analysis { get; init; } = new();

    /// <summary>Who is blind to what; null where nobody is.</summary>
    public Blinding? Blinding { get; init; }

    /// <summary>Limits at which a session stops.</summary>
    public IReadOnlyList<StopRule> StopRules { get; init; } = [];

    /// <summary>Cautions for whoever runs the study.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];

    /// <summary>Path of the declaration, for messages.</summary>
    public required string File { get; init; }

    /// <summary>Hash of the declaration.</summary>
    public required Sha256 Hash { get; init; }

    /// <summary>The phase of that name, or null.</summary>
    public Phase? Phase(string name) => Phases.FirstOrDefault(phase => phase.Name == name);
}
