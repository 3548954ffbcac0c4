using SwingStudy.Domain.Declarations.Yaml;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Studies;

namespace SwingStudy.Domain.Declarations;

/// <summary>Reads <c>study.yaml</c>.</summary>
public static class StudyReader
{
    /// <summary>Reads the declaration, or tells all its problems with file and line.</summary>
    public static Outcome<StudyDeclaration> Read(string file)
    {
        var read = YamlFile.Read(file, "the study");
        if (!read.Succeeded(out var yaml))
            return Outcome<StudyDeclaration>.Failed(read.Problems);
        var root = yaml.Root;
        var study = new StudyDeclaration
        {
            Name = root.Text("name", "the study's name"),
            Zone = root.Text("zone", "the IANA zone in which days are told"),
            License = root.OptionalText("license"),
            PreferredSources = root.Texts("preferred_sources"),
        };
        if (root.OptionalText("dictionary") is { } dictionary)
            study = study with { Dictionary = dictionary };
        ZoneNames.Check(root, "zone", study.Zone);
        foreach (var source in study.PreferredSources.Where(source => !Forms.IsKebab(source)))
            root.Note(Messages.NotAName(root.PlaceOf("preferred_sources"), "preferred_sources", source, "names of sources", "bay-strike"));
        root.Done();
        return yaml.Problems.Any ? Outcome<StudyDeclaration>.Failed(yaml.Problems.InFileOrder) : study;
    }
}
