using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Problems;

namespace SwingStudy.Pipeline.Erasing;

/// <summary>What can stand in the way of an erasure.</summary>
internal static class ErasureMessages
{
    internal static Problem VaultLocked { get; } = new("vault-locked", new Place("identities.db"), "the vault is locked", "the passphrase: without names nobody can tell what to erase",
        "Give it in the environment variable SWINGSTUDY_PASSPHRASE or in a file named by --passphrase-file.");

    internal static Problem Unknown(ParticipantId participant) => new("participant-unknown", new Place("participant"), $"nobody has the code {participant}", "a player of the study",
        "'swingstudy people list' shows them.");

    internal static Problem Unfinished(ParticipantId other) => new("erasure-unfinished", new Place("participant"), "another erasure was cut short", "one erasure at a time",
        $"Finish it first: 'swingstudy people erase {other}'.");
}
