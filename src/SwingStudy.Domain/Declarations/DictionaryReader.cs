using SwingStudy.Domain.Declarations.Yaml;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Variables;

namespace SwingStudy.Domain.Declarations;

/// <summary>Reads a dictionary: <c>dictionary.yaml</c> with name, version and groups, and one file a group.</summary>
public static class DictionaryReader
{
    /// <summary>Name of the file that holds the dictionary's name, version and order.</summary>
    public const string MainFile = "dictionary.yaml";

    /// <summary>Reads the dictionary in <paramref name="folder"/>, or tells all its problems with file and line.</summary>
    public static Outcome<VariableDictionary> Read(string folder)
    {
        if (!Directory.Exists(folder))
            return Messages.FolderMissing(folder);
        var main = YamlFile.Read(Path.Combine(folder, MainFile), "the dictionary");
        if (!main.Succeeded(out var file))
            return Outcome<VariableDictionary>.Failed(main.Problems);

        var name = file.Root.Text("name", "the dictionary's name");
        var version = Names.Version(file.Root);
        var notes = Notes(file);
        var groupNames = file.Root.Texts("groups");
        if (groupNames.Count == 0)
            file.Root.Note(DeclarationMessages.NeededWith(file.Root.PlaceOf("groups"), "the dictionary", "groups", "the names of its group files, in column order"));
        file.Root.Done();

        var problems = new List<Problem>(file.Problems.InFileOrder);
        problems.AddRange(UnlistedFiles(folder, groupNames));
        var groups = new List<VariableGroup>();
        var variables = new List<(Variable Variable, Place Place)>();
        var hashes = new List<string> { $"{MainFile} {file.Hash}" };
        foreach (var groupName in groupNames)
        {
            var read = YamlFile.Read(Path.Combine(folder, groupName + ".yaml"), $"the group '{groupName}'");
            if (!read.Succeeded(out var groupFile))
            {
                problems.AddRange(read.Problems);
                continue;
            }

            hashes.Add($"{groupName}.yaml {groupFile.Hash}");
            groups.Add(ReadGroup(groupFile, groupName, variables));
            problems.AddRange(groupFile.Problems.InFileOrder);
        }

        problems.AddRange(RepeatedNames(variables));
        return problems.Count > 0
            ? Outcome<VariableDictionary>.Failed(problems)
            : new VariableDictionary(name, version, [.. variables.Select(pair => pair.Variable)], Sha256.Of(string.Join('\n', hashes)))
            {
                Groups = groups,
                Notes = notes,
            };
    }

    private static VariableGroup ReadGroup(YamlFile file, string name, List<(Variable, Place)> variables)
    {
        var title = file.Root.Text("title", "what a person calls the group");
        var description = file.Root.Text("description", "what belongs to the group");
        foreach (var map in file.Root.Maps("variables", "variable", "name"))
            variables.Add((VariableReader.Read(map, name), map.PlaceOf("name")));
        file.Root.Done();
        return new(name, title, description);
    }

    private static List<VersionNote> Notes(YamlFile file)
    {
        var notes = new List<VersionNote>();
        foreach (var map in file.Root.Maps("notes", "the note", "version"))
        {
            notes.Add(new(Names.Version(map), map.Texts("changes")));
            map.Done();
        }

        return notes;
    }

    private static IEnumerable<Problem> UnlistedFiles(string folder, IReadOnlyList<string> groups) => Directory
        .EnumerateFiles(folder, "*.yaml")
        .Where(path => Path.GetFileName(path) != MainFile && !groups.Contains(Path.GetFileNameWithoutExtension(path)))
        .Order(StringComparer.Ordinal)
        .Select(path => DeclarationMessages.GroupFileUnlisted(new Place(path), Path.GetFileNameWithoutExtension(path)));

    private static IEnumerable<Problem> RepeatedNames(List<(Variable Variable, Place Place)> variables) => variables
        .Where(pair => pair.Variable.Name.Length > 0)
        .GroupBy(pair => pair.Variable.Name, StringComparer.OrdinalIgnoreCase)
        .SelectMany(group => group.Skip(1).Select(pair => new Problem(
            "name-repeated",
            pair.Place,
            $"variable '{pair.Variable.Name}' is declared twice",
            "distinct names, also ignoring case",
            $"Rename or remove one of them; the first is at {group.First().Place}.")));
}
