using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Protocols;
using SwingStudy.Domain.Studies;

namespace SwingStudy.Pipeline.Analyse;

/// <summary>What the analysis knows of a phase.</summary>
/// <param name="Name">The word in the <c>phase</c> column.</param>
/// <param name="Role">What it is for.</param>
/// <param name="MinimumSessions">Sessions a player needs in it.</param>
/// <param name="MinimumSwings">Counted swings a session needs.</param>
internal sealed record PhaseSetting(string Name, string Role, int MinimumSessions, int MinimumSwings)
{
    /// <summary>The phases of the protocol, in its order.</summary>
    public static IReadOnlyList<PhaseSetting> Of(StudySetup setup) =>
        [.. setup.Protocol.Phases.Select(phase => new PhaseSetting(phase.Name, Word.Of(phase.Role), phase.MinimumSessions, phase.MinimumSwings))];

    /// <summary>Whether conditions are meant to differ from other phases.</summary>
    public bool IsTransfer => Role == Word.Of(PhaseRole.Transfer);

    /// <summary>Whether it comes before anything is changed.</summary>
    public bool IsBaseline => Role == Word.Of(PhaseRole.Baseline);

    /// <summary>Whether the cue or training is given in it.</summary>
    public bool IsIntervention => Role == Word.Of(PhaseRole.Intervention);

    /// <summary>The name as people read it.</summary>
    public string Plain => Name.Replace('-', ' ');

    /// <summary>The name as one word of a sentence that goes on: in quotes where it has several words.</summary>
    public string Quoted => Name.Contains('-', StringComparison.Ordinal) ? $"'{Plain}'" : Name;
}
