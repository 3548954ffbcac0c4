namespace SwingStudy.Pipeline.Tests.Support;

/// <summary>The repository, found upward from the test program.</summary>
internal static class Repository
{
    public static string Root { get; } = Find(AppContext.BaseDirectory);

    private static string Find(string folder) =>
        File.Exists(Path.Combine(folder, "SwingStudy.sln"))
            ? folder
            : Find(Path.GetDirectoryName(folder) ?? throw new InvalidOperationException("The tests run outside the repository."));
}
