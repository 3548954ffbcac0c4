using SwingStudy.Domain.Declarations.Yaml;

namespace SwingStudy.Domain.Declarations;

/// <summary>Reads the names and versions that declarations give.</summary>
internal static class Names
{
    /// <summary>A name of lower-case words joined by hyphens that must be there.</summary>
    public static string Kebab(YamlMap map, string key, string example)
    {
        var name = map.Text(key, "a kebab-case name");
        if (name.Length > 0 && !Forms.IsKebab(name))
            map.Note(Messages.NotAName(map.PlaceOf(key), key, name, "lower-case words joined by hyphens", example));
        return name;
    }

    /// <summary>A name of lower-case words joined by underscores that must be there.</summary>
    public static string Snake(YamlMap map, string key, string example)
    {
        var name = map.Text(key, "a snake-case name");
        if (name.Length > 0 && !Forms.IsSnake(name))
            map.Note(Messages.NotAName(map.PlaceOf(key), key, name, "lower-case words joined by underscores", example));
        return name;
    }

    /// <summary>The semantic version under the key <c>version</c>, which must be there.</summary>
    public static Version Version(YamlMap map)
    {
        var text = map.Text("version", "a semantic version such as 1.0.0");
        if (Forms.SemanticVersion(text) is { } version)
            return version;
        if (text.Length > 0)
            map.Note(Messages.NotAName(map.PlaceOf("version"), "version", text, "three whole numbers with points", "1.0.0"));
        return new(0, 0, 0);
    }
}
