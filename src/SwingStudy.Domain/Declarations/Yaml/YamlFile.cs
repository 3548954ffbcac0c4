using System.Text;
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
    private static readonly UTF8Encoding StrictUtf8 = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>Opens a file.</summary>
    /// <param name="path">The file as the person named it.</param>
    /// <param name="subject">What the file declares, for messages: "the protocol".</param>
    public static Outcome<YamlFile> Read(string path, string subject)
    {
        if (!File.Exists(path))
            return Messages.FileMissing(path);
        var bytes = File.ReadAllBytes(path);
        if (Text(path, bytes) is var decoded && !decoded.Succeeded(out var text))
            return Outcome<YamlFile>.Failed(decoded.Problems);
        var stream = new YamlStream();
        var parser = new Parser(new StringReader(text));
        try
        {
            stream.Load(parser);
        }
        catch (YamlException exception)
        {
            return Messages.NotYaml(path, (int)exception.Start.Line, exception.Message);
        }
        catch (InvalidOperationException)
        {
            return Misplaced(path, parser);
        }
        catch (ArgumentException)
        {
            return Misplaced(path, parser);
        }

        if (stream.Documents is not [{ RootNode: YamlMappingNode map }])
            return Messages.NotAGroup(path);
        var problems = new ProblemList(path);
        return new YamlFile(new YamlMap(map, problems, subject), Sha256.Of(bytes), problems);
    }

    /// <summary>Some mistakes of the text, such as <c>[-]</c> or a key that ends a list, the parser reports as if they were its caller's.</summary>
    private static Problem Misplaced(string path, Parser parser) =>
        Messages.NotYaml(path, (int)(parser.Current?.End.Line ?? 1), "a sign where a key or a value belongs");

    /// <summary>The text of UTF-8 bytes, free of the characters that YAML forbids (YAML 1.2, chapter 5.1) and its parser stumbles over.</summary>
    private static Outcome<string> Text(string path, byte[] bytes)
    {
        string text;
        try
        {
            text = StrictUtf8.GetString(bytes);
        }
        catch (DecoderFallbackException exception)
        {
            return Messages.NotUtf8(path, 1 + bytes.Take(exception.Index).Count(value => value == (byte)'\n'));
        }

        text = text.TrimStart('\ufeff');
        for (var i = 0; i < text.Length; i++)
        {
            if (IsForbidden(text[i]))
                return Messages.CharacterForbidden(path, 1 + text.AsSpan(0, i).Count('\n'), text[i]);
        }

        return text;
    }

    private static bool IsForbidden(char sign) => sign < ' ' ? sign is not ('\t' or '\n' or '\r') : sign is '\u007f' or '\ufeff' or '\ufffe' or '\uffff';
}
