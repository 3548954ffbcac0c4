namespace SwingStudy.Domain.Declarations;

/// <summary>JSON Schemas of all declarations, so that editors complete and check them while a person writes.</summary>
public static class DeclarationSchemas
{
    /// <summary>Schema of <c>dictionary.yaml</c>.</summary>
    public const string Dictionary = "dictionary.schema.json";

    /// <summary>Schema of the group files of a dictionary.</summary>
    public const string Variables = "variables.schema.json";

    /// <summary>Schema of protocols.</summary>
    public const string Protocol = "protocol.schema.json";

    /// <summary>Schema of source mappings.</summary>
    public const string Source = "source.schema.json";

    /// <summary>Schema of <c>study.yaml</c>.</summary>
    public const string Study = "study.schema.json";

    /// <summary>File names of all schemas.</summary>
    public static IReadOnlyList<string> All { get; } = [Dictionary, Variables, Protocol, Source, Study];

    /// <summary>The text of a schema.</summary>
    /// <param name="name">One of <see cref="All"/>.</param>
    /// <exception cref="ArgumentException">There is no such schema.</exception>
    public static string Text(string name)
    {
        using var stream = typeof(DeclarationSchemas).Assembly.GetManifestResourceStream(name)
            ?? throw new ArgumentException($"There is no schema '{name}'.", nameof(name));
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
