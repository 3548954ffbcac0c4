using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Problems;
using YamlDotNet.Core;
using YamlDotNet.RepresentationModel;

namespace SwingStudy.Domain.Declarations.Yaml;

/// <summary>One declaration file with one document of keys.</summary>
/// <param name="Root">Its keys.</param>
/// <param name="Hash">Hash of its bytes.</param>
/// <param name="Problems">Takes what is found wrong.</param>
internal sealed record YamlFile(YamlMap Root, Sha256 Hash, ProblemList Problems)
{
    /// <summary>Opens a file.</summary>
    /// <param name="path">The file as the person named it.</param>
    /// <param name="subject">What the file declares, for messages: "the protocol".</param>
    public static Outcome<YamlFile> Read(string path, string subject)
    {
        if (!File.Exists(path))
            return Messages.FileMissing(path);
        var bytes = File.ReadAllBytes(path);
        var stream = new YamlStream();
        try
        {
            using var reader = new StreamReader(new MemoryStream(bytes), System.Text.Encoding.UTF8, detectEncodingFromByteOrderMarks: true);
            stream.Load(reader);
        }
        catch (YamlException exception)
        {
            return Messages.NotYaml(path, (int)exception.Start.Line, exception.Message);
        }

        if (stream.Documents is not [{ RootNode: YamlMappingNode map }])
            return Messages.NotAGroup(path);
        var problems = new ProblemList(path);
        return new YamlFile(new YamlMap(map, problems, subject), Sha256.Of(bytes), problems);
    }
}
