namespace SwingStudy.App.Terminal;

/// <summary>A folder for intermediate files that is removed when disposed.</summary>
internal sealed class WorkFolder : IDisposable
{
    /// <summary>Its path.</summary>
    public string Path { get; } = Directory.CreateTempSubdirectory("swingstudy-").FullName;

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
