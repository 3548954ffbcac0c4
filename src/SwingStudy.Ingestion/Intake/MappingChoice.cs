using System.Text.RegularExpressions;
using SwingStudy.Domain.Declarations;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Sources;
using SwingStudy.Domain.Variables;
using SwingStudy.Ingestion.Mapping;
using SwingStudy.Ingestion.Mapping.Long;
using SwingStudy.Ingestion.Readers;
using SwingStudy.Ingestion.Recordings;

namespace SwingStudy.Ingestion.Intake;

/// <summary>Which mapping reads a file: the one its inbox folder is named after; else the only one whose pattern and headings fit.</summary>
internal sealed class MappingChoice(IReadOnlyList<SourceMapping> mappings, VariableDictionary dictionary)
{
    private readonly Dictionary<string, Regex> _patterns =
        mappings.ToDictionary(mapping => mapping.Source, mapping => Patterns.Compile(mapping.Files, whole: true), StringComparer.Ordinal);

    /// <summary>Whether the name is that of a corrected export.</summary>
    public bool IsRevision(Candidate candidate) => mappings.Any(mapping =>
        _patterns[mapping.Source].Match(NameWithin(candidate, mapping)) is { Success: true } match && match.Groups["revision"].Success);

    /// <summary>The mapping whose table beside its files this is; null for files of other kinds. In the inbox its folder names the mapping.</summary>
    public SourceMapping? IndexOf(Candidate candidate)
    {
        var slash = candidate.Name.IndexOf('/', StringComparison.Ordinal);
        var isOfInbox = candidate.Place != CandidatePlace.Named && slash > 0;
        return mappings.FirstOrDefault(mapping => mapping.Index is { } index && Path.GetFileName(candidate.Name) == index.File && (!isOfInbox || candidate.Name[..slash] == mapping.Source));
    }

    /// <summary>The mapping, or why there is none.</summary>
    public Outcome<ChosenMapping> For(Candidate candidate, string bytesPath)
    {
        var slash = candidate.Name.IndexOf('/', StringComparison.Ordinal);
        if (candidate.Place != CandidatePlace.Named && slash > 0)
        {
            var folder = candidate.Name[..slash];
            if (mappings.FirstOrDefault(mapping => mapping.Source == folder) is { } own)
                return MatchOf(candidate, own) is { } match ? new ChosenMapping(own, match) : IntakeMessages.NameUnexpected(candidate.Name, own.Files, own.File);
            if (candidate.Place == CandidatePlace.Inbox)
                return IntakeMessages.SourceUnknown(candidate.Name, folder, Nearest.Of(folder, mappings.Select(mapping => mapping.Source)), mappings.Select(mapping => mapping.Source));
        }

        var byName = mappings.Select(mapping => (mapping, match: MatchOf(candidate, mapping))).Where(pair => pair.match is not null)
            .Select(pair => new ChosenMapping(pair.mapping, pair.match)).ToList();
        if (byName.Count > 1)
            byName = [.. byName.Where(choice => Fits(choice, candidate, bytesPath))];
        return byName.Count switch
        {
            0 => IntakeMessages.MappingNone(candidate.Name, mappings.Select(mapping => $"{mapping.Source} ({mapping.Files})")),
            1 => byName[0],
            _ => IntakeMessages.MappingSeveral(candidate.Name, byName.Select(choice => choice.Mapping.Source)),
        };
    }

    private Match? MatchOf(Candidate candidate, SourceMapping mapping) =>
        _patterns[mapping.Source].Match(NameWithin(candidate, mapping)) is { Success: true } match ? match : null;

    /// <summary>Path below the source's folder of the inbox; of other files the name alone.</summary>
    public static string NameWithin(Candidate candidate, SourceMapping mapping) =>
        candidate.Name.StartsWith(mapping.Source + "/", StringComparison.Ordinal) ? candidate.Name[(mapping.Source.Length + 1)..] : Path.GetFileName(candidate.Name);

    private bool Fits(ChosenMapping choice, Candidate candidate, string bytesPath)
    {
        if (choice.Mapping.Rows == RowMeaning.Recordings)
            return FitsRecordings(choice, candidate, bytesPath);
        var stream = new FileStream(bytesPath, FileMode.Open, FileAccess.Read, FileShare.Read, 0, FileOptions.SequentialScan);
        if (!RecordReaders.Open(stream, candidate.Name, choice.Mapping).Succeeded(out var document))
            return false;
        using (document)
        {
            var shape = SheetShape.Of(document, choice.NameMatch);
            return choice.Mapping.LongForm is { } form
                ? LongPivot.Read(document, choice.Mapping, form, shape).Problems.Count == 0
                : MappingPlanner.Plan(choice.Mapping, dictionary, shape).Problems.Count == 0;
        }
    }

    private static bool FitsRecordings(ChosenMapping choice, Candidate candidate, string bytesPath)
    {
        var request = new RecordingRequest { Mapping = choice.Mapping, File = candidate.Name, Name = NameWithin(candidate, choice.Mapping), NameMatch = choice.NameMatch };
        if (!RecordingReaders.Open(bytesPath, request).Succeeded(out var reader))
            return false;
        using (reader)
            return reader.Fits();
    }
}
