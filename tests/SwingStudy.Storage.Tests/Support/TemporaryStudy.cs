using SwingStudy.Domain.Studies;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Storage.Tests.Support;

/// <summary>A study folder that is gone after the test.</summary>
public sealed class TemporaryStudy : IDisposable
{
    public StudyFolder Folder { get; } = new(Directory.CreateTempSubdirectory("study-").FullName);

    public TableStore Tables => new(Folder);

    public string File(string name, string content)
    {
        var path = Path.Combine(Folder.Root, name);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        System.IO.File.WriteAllText(path, content);
        return path;
    }

    public void Dispose() => Directory.Delete(Folder.Root, recursive: true);
}
