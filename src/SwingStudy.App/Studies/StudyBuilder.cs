using System.Globalization;
using System.Text.Json;
using SwingStudy.Domain.Declarations;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Studies;

namespace SwingStudy.App.Studies;

/// <summary>Lays out the folder of a new study.</summary>
internal static class StudyBuilder
{
    /// <summary>Creates the folders and declarations. Nothing that stands there already is touched.</summary>
    /// <param name="folder">Where the study shall lie; must not hold a study, and no other files.</param>
    /// <param name="name">Name of the study.</param>
    /// <param name="zone">IANA zone in which days are told.</param>
    /// <param name="protocolFile">The protocol to copy.</param>
    /// <returns>The study's declarations, or the problems with them.</returns>
    public static Outcome<StudySetup> Create(StudyFolder folder, string name, string zone, string protocolFile)
    {
        if (Directory.Exists(folder.Root) && Directory.EnumerateFileSystemEntries(folder.Root).Any())
        {
            return new Problem("folder-not-empty", new Place(folder.Root), "the folder is not empty", "a new or empty folder",
                "Choose another folder; an existing study is never overwritten.");
        }

        if (!DictionaryReader.Read(ShippedDeclarations.Dictionary).Succeeded(out var dictionary, out var problems)
            || !ProtocolReader.Read(protocolFile, dictionary).Succeeded(out _, out problems))
            return Outcome<StudySetup>.Failed(problems);

        foreach (var part in new[] { folder.Root, folder.Sources, folder.Inbox, folder.Originals, folder.Tables, folder.Releases, folder.Reports, folder.Logs })
            Directory.CreateDirectory(part);
        CopyDictionary(folder);
        File.Copy(protocolFile, folder.ProtocolFile);
        File.WriteAllText(folder.StudyFile, string.Create(CultureInfo.InvariantCulture, $"""
            # What this study is called, and where its parts stand.
            name: {JsonSerializer.Serialize(name)}
            zone: {zone}                    # IANA zone in which days and reports are told
            dictionary: data-dictionary     # the variables, copied here so that the study keeps its own version
            preferred_sources: []           # sources in order of preference: the first with swings gives the swings

            """));
        return StudySetup.Read(folder);
    }

    /// <summary>Copies the shipped dictionary into the study, which keeps its own version from then on.</summary>
    public static void CopyDictionary(StudyFolder folder)
    {
        var to = Path.Combine(folder.Root, "data-dictionary");
        Directory.CreateDirectory(to);
        foreach (var file in Directory.GetFiles(ShippedDeclarations.Dictionary))
            File.Copy(file, Path.Combine(to, Path.GetFileName(file)));
    }
}
