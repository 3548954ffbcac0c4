using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Problems;

namespace SwingStudy.Storage.Originals;

/// <summary>What can stand in the way of storing and reading originals.</summary>
public static class OriginalMessages
{
    /// <summary>Code of an encrypted original that cannot be read while the vault is locked.</summary>
    public const string LockedCode = "original-locked";

    internal static Problem Missing(string path) => new("file-missing", new Place(path), "no file of that name", "an export to take in",
        "Check the path; a file that a program is still copying may appear later.");

    internal static Problem Changing(string path) => new("file-changing", new Place(path), "a file that changed while it was read", "a finished export",
        "Wait until the exporting program has finished writing, then take the file in again.");

    internal static Problem NotReadable(string path, string reason) => new("file-not-readable", new Place(path), reason, "a file you may read",
        "Close the program that holds it, or ask for the right to read it; the file is untouched.");

    internal static Problem NotStored(string path, string folder, string reason) => new("original-not-stored", new Place(path), reason,
        $"room and the right to write in {folder}", "Free space or mend the rights there, then take the file in again; the file is untouched.");

    internal static Problem Gone(Sha256 hash) => new("original-missing", new Place($"originals/{hash.Short}"), "no original of that hash",
        "the bytes that the registry names", "Bring the originals folder back from a backup.");

    internal static Problem Damaged(Sha256 hash, Sha256 found) => new("original-damaged", new Place($"originals/{hash.Short}"),
        $"bytes with the hash {found.Short}", $"bytes with the hash {hash.Short}", "Bring this original back from a backup.");

    internal static Problem Locked(Sha256 hash) => new(LockedCode, new Place($"originals/{hash.Short}"), "an encrypted original, and a locked vault",
        "the vault's passphrase", "Give it in the environment variable SWINGSTUDY_PASSPHRASE or in a file named by --passphrase-file.");

    internal static Problem NotOpened(Sha256 hash) => new("original-damaged", new Place($"originals/{hash.Short}"), "an encrypted file that the study's key does not open",
        $"bytes with the hash {hash.Short}, encrypted by this study", "Bring this original back from a backup.");
}
