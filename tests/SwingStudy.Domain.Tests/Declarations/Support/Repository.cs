namespace SwingStudy.Domain.Tests.Declarations.Support;

/// <summary>Folders of the repository, found upward from the test program.</summary>
public static class Repository
{
    public static string Root { get; } = Find(AppContext.BaseDirectory);

    public static string DictionaryFolder { get; } = Path.Combine(Root, "data-dictionary");

    public static string ProtocolFolder { get; } = Path.Combine(Root, "protocols");

    private static string Find(string folder) =>
        File.Exists(Path.Combine(folder, "SwingStudy.sln"))
            ? folder
            : Find(Path.GetDirectoryName(folder) ?? throw new InvalidOperationException("The tests run outside the repository."));
}
