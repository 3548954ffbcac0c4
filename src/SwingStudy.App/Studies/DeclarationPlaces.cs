using SwingStudy.Domain.Declarations;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Studies;
using SwingStudy.Domain.Variables;

namespace SwingStudy.App.Studies;

/// <summary>Finds the declarations that a command means: those of the study one stands in, else those that ship with the program.</summary>
internal static class DeclarationPlaces
{
    /// <summary>The dictionary in <paramref name="named"/>, or of the study, or the shipped one.</summary>
    public static Outcome<VariableDictionary> Dictionary(StudyFolder study, string? named)
    {
        if (named is not null)
            return DictionaryReader.Read(named);
        if (!File.Exists(study.StudyFile))
            return DictionaryReader.Read(ShippedDeclarations.Dictionary);
        var declaration = StudyReader.Read(study.StudyFile);
        return declaration.Succeeded(out var found)
            ? DictionaryReader.Read(Path.Combine(study.Root, found.Dictionary))
            : Outcome<VariableDictionary>.Failed(declaration.Problems);
    }

    /// <summary>The protocol file that <paramref name="named"/> means, or the study's.</summary>
    public static Outcome<string> ProtocolFile(StudyFolder study, string? named)
    {
        if (named is null && File.Exists(study.ProtocolFile))
            return study.ProtocolFile;
        if (named is not null && ShippedDeclarations.FindProtocol(named) is { } found)
            return found;
        return new Problem("protocol-not-found", new Place(named ?? study.ProtocolFile), "no such protocol", "a protocol file, or a study with one",
            $"Name a file, or one that ships with the program: {string.Join(", ", ShippedDeclarations.Protocols)}.");
    }
}
