using SwingStudy.Domain.Problems;

namespace SwingStudy.Storage.Identities;

/// <summary>All messages about the vault. A wrong passphrase and a damaged vault read the same: nothing may be learned from them.</summary>
internal static class VaultMessages
{
    private static readonly Place Where = new("identities.db");

    internal static Problem DoesNotOpen { get; } = new("vault-not-opened", Where, "the passphrase does not open the vault", "the vault's passphrase",
        "Try again. Nothing was changed. Without the passphrase names cannot be read by anybody; intake works without it.");

    internal static Problem Locked { get; } = new("vault-locked", Where, "the vault is locked", "its passphrase",
        "Give it in the environment variable SWINGSTUDY_PASSPHRASE or in a file named by --passphrase-file.");

    internal static Problem Exists { get; } = new("vault-exists", Where, "the study has a vault", "a study without one",
        "'swingstudy people vault change' gives it another passphrase.");

    internal static Problem Off { get; } = new("vault-off", Where, "the study has no vault", "a vault", "'swingstudy people vault init' makes one.");

    internal static Problem TooShort { get; } = new("vault-passphrase-short", Where, "a passphrase of fewer than 12 characters", "12 characters or more",
        "Take several words in a row that nobody would guess, and keep them where the study is not.");

    internal static Problem FileExists(string file) => new("file-exists", new Place(file), "a file of that name", "a new file", "Choose another name: a backup is never overwritten.");

    internal static Problem NoBackup(string file) => new("vault-backup-unreadable", new Place(file), "no backup of a vault of this study", "a file that 'people vault backup' wrote for this study",
        "Check the path. Nothing was changed.");

    internal static Problem BackupWithoutOriginals(string file) => new("vault-backup-unreadable", new Place(file), "a backup that does not hold the key of the encrypted originals", "a backup written since originals are encrypted",
        "Take a newer backup: with this one nobody could read the originals any more. Nothing was changed.");
}
