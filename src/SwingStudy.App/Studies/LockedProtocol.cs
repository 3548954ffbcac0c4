using System.Text;
using System.Text.Json;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Protocols;
using SwingStudy.Domain.Studies;
using SwingStudy.Storage.Registry;

namespace SwingStudy.App.Studies;

/// <summary>Whether the protocol that lies in the folder is the one that is locked.</summary>
internal static class LockedProtocol
{
    /// <summary>Code of the problem that a locked protocol was edited.</summary>
    public const string EditedCode = "protocol-edited";

    /// <summary>The problem that <c>protocol.yaml</c> is not what was locked; null when it is, or when nothing is locked.</summary>
    public static Problem? Edited(StudyFolder folder, StudyRegistry registry)
    {
        if (registry.Protocol.History().Current is not { } locked)
            return null;
        var found = File.Exists(folder.ProtocolFile) ? Sha256.Of(File.ReadAllBytes(folder.ProtocolFile)) : (Sha256?)null;
        if (found == locked.Hash)
            return null;
        return new Problem(
            EditedCode,
            new Place(folder.ProtocolFile),
            found is { } hash ? $"the file has the hash {hash.Short}" : "there is no such file",
            FormattableString.Invariant($"version {locked.Number}, locked on {locked.At:uuuu-MM-dd} by {locked.Actor} with the hash {locked.Hash.Short}"),
            "'swingstudy protocol restore' puts the locked text back; 'swingstudy protocol diff' shows what differs, and "
            + "'swingstudy protocol amend --reason TEXT --known TEXT' makes it a new version.");
    }

    /// <summary>The same of a folder whose registry is not open; null where no study stands.</summary>
    public static Problem? EditedIn(StudyFolder folder, TimeProvider time)
    {
        if (!File.Exists(folder.Registry))
            return null;
        using var registry = new StudyRegistry(folder, time);
        return Edited(folder, registry);
    }

    /// <summary>Puts the locked text back and keeps the edited file beside it.</summary>
    /// <returns>Path of the edited file; null when there was none.</returns>
    public static string? PutBack(StudyFolder folder, StudyRegistry registry, ProtocolVersion locked, string actor)
    {
        string? kept = null;
        registry.Act(actor, "protocol.restore", _ =>
        {
            if (File.Exists(folder.ProtocolFile))
                kept = SetAside(folder.ProtocolFile);
            return JsonSerializer.Serialize(new { version = locked.Number, hash = locked.Hash.ToString(), edited_hash = kept is null ? null : Sha256.Of(File.ReadAllBytes(kept)).ToString() });
        });
        Write(folder, Encoding.UTF8.GetBytes(locked.Text));
        return kept;
    }

    /// <summary>Writes <c>protocol.yaml</c>. Where a link lies under that name, the link is replaced: what it leads to is not the study's to change. To be read, a
    /// link is as good as a file, since the text is what is locked.</summary>
    public static void Write(StudyFolder folder, byte[] text)
    {
        var temporary = folder.ProtocolFile + ".part";
        File.WriteAllBytes(temporary, text);
        File.Move(temporary, folder.ProtocolFile, overwrite: true);
    }

    private static string SetAside(string file)
    {
        var number = 1;
        string aside;
        while (File.Exists(aside = Path.ChangeExtension(file, FormattableString.Invariant($"edited-{number}.yaml"))))
            number++;
        File.Move(file, aside);
        return aside;
    }
}
