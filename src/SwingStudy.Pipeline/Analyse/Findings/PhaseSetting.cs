using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Protocols;

namespace SwingStudy.Pipeline.Analyse.Findings;

/// <summary>What findings know of a phase.</summary>
/// <param name="Name">The word in the <c>phase</c> column.</param>
/// <param name="Role">What it is for.</param>
/// <param name="MinimumSessions">Sessions a player needs in it.</param>
/// <param name="MinimumSwings">Counted swings a session needs.</param>
internal sealed record PhaseSetting(string Name, string Role, int MinimumSessions, int MinimumSwings)
{
    /// <summary>Whether conditions are meant to differ from other phases.</summary>
    public bool IsTransfer => Role == Word.Of(PhaseRole.Transfer);

    /// <summary>Whether it comes before anything is changed.</summary>
    public bool IsBaseline => Role == Word.Of(PhaseRole.Baseline);

    /// <summary>The name as people read it.</summary>
    public string Plain => Name.Replace('-', ' ');
}
