namespace SwingStudy.Domain.Protocols;

/// <summary>What of one phase had been taken at some moment: what a person who decided then may have known.</summary>
/// <param name="Phase">Phase; empty for swings that no session gives a phase.</param>
/// <param name="Role">What the phase is for: <c>baseline</c>, <c>intervention</c>, <c>follow-up</c>, <c>transfer</c>; empty where the protocol has no such phase.</param>
/// <param name="Sessions">Sessions that had begun.</param>
/// <param name="Swings">Swings in the table of swings.</param>
public sealed record PhaseData(string Phase, string Role, int Sessions, long Swings)
{
    /// <summary>Whether it can show an effect: data of another phase than a baseline.</summary>
    public bool TellsOfEffects => Role != Identifiers.Word.Of(PhaseRole.Baseline) && (Sessions > 0 || Swings > 0);

    /// <inheritdoc/>
    public override string ToString() =>
        FormattableString.Invariant($"{(Phase.Length == 0 ? "no phase" : Phase)}: {Sessions} {(Sessions == 1 ? "session" : "sessions")}, {Swings} {(Swings == 1 ? "swing" : "swings")}");
}
