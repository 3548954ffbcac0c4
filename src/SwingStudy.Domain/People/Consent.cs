using NodaTime;
using SwingStudy.Domain.Identifiers;

namespace SwingStudy.Domain.People;

/// <summary>One yes or no of one signer to one scope. An earlier one stays in the record; the newest of a signer holds.</summary>
/// <param name="Participant">Who.</param>
/// <param name="Scope">What for.</param>
/// <param name="Given">False when it was refused or taken back.</param>
/// <param name="Signer">Who signed.</param>
/// <param name="At">When it was recorded.</param>
public sealed record Consent(ParticipantId Participant, ConsentScope Scope, bool Given, ConsentSigner Signer, Instant At)
{
    /// <summary>Version of the form that was signed.</summary>
    public string? Version { get; init; }

    /// <summary>Language of that form, a BCP 47 tag such as <c>en</c> or <c>pt-BR</c>.</summary>
    public string? Language { get; init; }

    /// <summary>The day on which it was signed.</summary>
    public LocalDate? SignedOn { get; init; }

    /// <summary>Who took it: a code or an office, best not the player's coach; no name of a player.</summary>
    public string? TakenBy { get; init; }

    /// <summary>Remark; no name.</summary>
    public string? Note { get; init; }
}
