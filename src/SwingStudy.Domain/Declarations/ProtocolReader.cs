using SwingStudy.Domain.Declarations.Yaml;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Protocols;
using SwingStudy.Domain.Variables;

namespace SwingStudy.Domain.Declarations;

/// <summary>Reads protocols.</summary>
public static class ProtocolReader
{
    /// <summary>
    /// Reads one protocol, or tells all its problems with file and line: first those of the text, and where the text has none those of
    /// consistency (<see cref="ProtocolCheck"/>). What is weak but allowed is a warning, told by <see cref="ProtocolCheck.Review"/>.
    /// </summary>
    public static Outcome<Protocol> Read(string file, VariableDictionary dictionary)
    {
        var read = YamlFile.Read(file, "the protocol");
        if (!read.Succeeded(out var yaml))
            return Outcome<Protocol>.Failed(read.Problems);
        var root = yaml.Root;
        var parts = new ProtocolParts(root, dictionary);
        var protocol = new Protocol
        {
            Name = Names.Kebab(root, "name", "earlier-push"),
            Version = Names.Version(root),
            Title = root.Text("title", "a title for people"),
            Question = root.Text("question", "the question that the study answers"),
            Design = root.Choice<DesignKind>("design", "the kind of design"),
            Phases = parts.Phases(),
            Randomization = parts.Randomization(),
            FixedConditions = parts.Variables(root, "fixed_conditions"),
            Eligibility = parts.Eligibility(),
            Players = parts.Players(),
            Outcomes = parts.Outcomes(),
            Contrasts = parts.Contrasts(),
            Curves = parts.Curves(),
            Screening = parts.Screening(),
            Signals = parts.Signals(),
            Analysis = parts.Analysis(),
            Blinding = parts.Blinding(),
            Standard = parts.Standard(),
            StopRules = parts.StopRules(),
            Cautions = root.Texts("cautions"),
            File = file,
            Hash = yaml.Hash,
        };
        root.Done();
        if (yaml.Problems.Any)
            return Outcome<Protocol>.Failed(yaml.Problems.InFileOrder);
        var review = ProtocolCheck.Review(protocol, dictionary);
        return review.Problems.Count > 0 ? Outcome<Protocol>.Failed(review.Problems) : protocol;
    }
}
