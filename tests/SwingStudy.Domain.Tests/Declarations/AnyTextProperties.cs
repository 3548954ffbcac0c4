using CsCheck;
using SwingStudy.Domain.Declarations;
using SwingStudy.Domain.Tests.Declarations.Support;

namespace SwingStudy.Domain.Tests.Declarations;

/// <summary>Whatever a person types into a declaration, the reader answers with a value or with problems, and never with a fault.</summary>
public sealed class AnyTextProperties : IDisposable
{
    private static readonly string[] Fragments =
    [
        "-", ": ", "- ", "{ ", " }", "[", "]", "'", "\"", "\n", "\n  ", "\t", "&a ", "*a", "!!int ", "|", ">", "? ", "# ", "null", "~", "1e999", "-0", ".nan",
        "<<: ", "%", "@", "\u00e4", "\ufeff", "\0", "true", "99999999999999999999", "(?<value>", "\\", "column", "unit", "[mi_i]/h",
    ];

    private static readonly string Protocol = File.ReadAllText(Path.Combine(Repository.ProtocolFolder, "cue-pre-post.yaml"));

    private static readonly string Group = File.ReadAllText(Path.Combine(Repository.DictionaryFolder, "club-and-ball.yaml"));

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void AProtocolWithAnythingWrittenIntoItIsReadOrTold() => Edits(Protocol).Sample(
        text => _ = ProtocolReader.Read(_folder.Write("p.yaml", text), Some.Dictionary).Problems.Select(problem => problem.ToString()).ToList(),
        iter: 150,
        threads: 1);

    [Fact]
    public void AMappingWithAnythingWrittenIntoItIsReadOrTold() => Edits(MappingReaderTests.Whole).Sample(
        text => _ = MappingReader.Read(_folder.Write("m.yaml", text), Some.Dictionary).Problems.Select(problem => problem.ToString()).ToList(),
        iter: 500,
        threads: 1);

    [Fact]
    public void AGroupWithAnythingWrittenIntoItIsReadOrTold()
    {
        _folder.Write("dictionary.yaml", "name: n\nversion: 1.0.0\ngroups: [g]\n");
        Edits(Group).Sample(
            text =>
            {
                _folder.Write("g.yaml", text);
                _ = DictionaryReader.Read(_folder.Path).Problems.Select(problem => problem.ToString()).ToList();
            },
            iter: 150,
            threads: 1);
    }

    /// <summary>The text with up to four stretches replaced by fragments that mean something to YAML, numbers, patterns or units.</summary>
    private static Gen<string> Edits(string text) =>
        Gen.Select(Gen.Int[0, text.Length - 1], Gen.Int[0, 12], Gen.Int[0, Fragments.Length - 1]).Array[1, 4].Select(edits =>
        {
            var edited = text;
            foreach (var (position, length, fragment) in edits)
            {
                var start = Math.Min(position, edited.Length);
                edited = edited[..start] + Fragments[fragment] + edited[Math.Min(edited.Length, start + length)..];
            }

            return edited;
        });
}
