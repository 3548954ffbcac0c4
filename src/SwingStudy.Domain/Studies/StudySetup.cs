using SwingStudy.Domain.Declarations;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Protocols;
using SwingStudy.Domain.Sources;
using SwingStudy.Domain.Variables;

namespace SwingStudy.Domain.Studies;

/// <summary>Everything that is declared in a study folder, read and checked together.</summary>
/// <param name="Folder">The folder.</param>
/// <param name="Declaration">What <c>study.yaml</c> says.</param>
/// <param name="Dictionary">The dictionary it names.</param>
/// <param name="Protocol">The protocol.</param>
/// <param name="Mappings">The source mappings, in the order of their names.</param>
public sealed record StudySetup(
    StudyFolder Folder,
    StudyDeclaration Declaration,
    VariableDictionary Dictionary,
    Protocol Protocol,
    IReadOnlyList<SourceMapping> Mappings)
{
    /// <summary>The lock and the amendments of the protocol, as the registry holds them; none where the declarations are read alone.</summary>
    public ProtocolHistory History { get; init; } = ProtocolHistory.None;

    /// <summary>What was drawn, as the registry holds it; nothing where the declarations are read alone.</summary>
    public Schedule Schedule { get; init; } = Schedule.None;

    /// <summary>Reads the declarations of a study, or tells the problems of all of them.</summary>
    public static Outcome<StudySetup> Read(StudyFolder folder)
    {
        if (!File.Exists(folder.StudyFile))
        {
            return new Problem("study-not-found", new Place(folder.Root), "no study.yaml stands here", "a study folder",
                "Name it with --study DIR, or start one with 'swingstudy new DIR --protocol FILE'.");
        }

        if (!StudyReader.Read(folder.StudyFile).Succeeded(out var declaration, out var problems)
            || !DictionaryReader.Read(Path.Combine(folder.Root, declaration.Dictionary)).Succeeded(out var dictionary, out problems))
            return Outcome<StudySetup>.Failed(problems);
        var protocol = ProtocolReader.Read(folder.ProtocolFile, dictionary);
        var mappings = MappingReader.ReadAll(folder.Sources, dictionary);
        problems = [.. protocol.Problems, .. mappings.Problems];
        return problems.Count > 0
            ? Outcome<StudySetup>.Failed(problems)
            : new StudySetup(folder, declaration, dictionary, protocol.Value!, mappings.Value!);
    }
}
