using System.Text.RegularExpressions;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Sources;
using SwingStudy.Domain.Variables;
using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Suggest;

/// <summary>Drafts a mapping for a file that nobody described, from headings, units, values and layout.</summary>
public static partial class SourceSuggester
{
    /// <summary>Reads the whole file and drafts a mapping.</summary>
    /// <param name="path">An export.</param>
    /// <param name="dictionary">Its names, synonyms, units and usual ranges are what headings and values are compared with.</param>
    /// <param name="source">Kebab-case name of the new source; null: made from the file name.</param>
    /// <param name="zone">IANA zone of the study, proposed for local times; null: left for a person to declare.</param>
    /// <returns>The draft, or why the file cannot be read. A draft is for a person to check: it is never used as it stands.</returns>
    public static Outcome<SourceSuggestion> Suggest(string path, VariableDictionary dictionary, string? source = null, string? zone = null)
    {
        var name = source ?? Kebab(Path.GetFileNameWithoutExtension(path));
        var draft = new Draft(new SourceMapping
        {
            Source = name,
            Title = $"Export like {Path.GetFileName(path)}",
            Device = name,
            Rows = RowMeaning.Swings,
            Reader = ReaderKind.Delimited,
            Files = $@".*\{Path.GetExtension(path)}",
            Time = new TimeRule { Parts = [] },
            File = path,
            Hash = Sha256.Of(""),
        });
        if (!RecordingGuess.TryFill(path, zone, draft).Succeeded(out var isRecording, out var faults))
            return Outcome<SourceSuggestion>.Failed(faults);
        if (!isRecording)
            draft.StartAgain();
        if (isRecording)
            return Finished(draft, name, source, path, []);
        var variables = dictionary.Variables.Select(variable => new VariableNames(variable)).ToList();
        if (!FileProbe.Open(path, draft, variables).Succeeded(out var document, out var problems))
            return Outcome<SourceSuggestion>.Failed(problems);
        using (document)
            Fill(document, variables, dictionary, zone, draft);
        return Finished(draft, name, source, path, document.Notices);
    }

    private static SourceSuggestion Finished(Draft draft, string name, string? source, string path, IReadOnlyList<Problem> notices)
    {
        draft.Say("source", name, source is null ? 0.3 : 1, source is null ? "made from the file name" : "given");
        draft.Say("device", name, 0.3, "name the very device");

        // The headings find themselves from here on, wherever the preamble ends.
        var mapping = draft.Mapping with { Layout = draft.Mapping.Layout with { PreambleRows = draft.Mapping.Recording?.Form == RecordingForm.Wide ? draft.Mapping.Layout.PreambleRows : null }, Text = draft.Mapping.Text with { Delimiter = null } };
        var yaml = DraftYaml.Of(mapping, draft.Lines, path);
        return new SourceSuggestion(
            mapping with { Hash = Sha256.Of(yaml) }, yaml, [.. draft.Lines.OrderBy(line => line.Confidence)], notices);
    }

    private static void Fill(RecordDocument document, IReadOnlyList<VariableNames> variables, VariableDictionary dictionary, string? zone, Draft draft)
    {
        var file = FileProfile.Of(document, draft.Mapping.Layout.HeadingRows == 2);
        if (file.Thousands is { } thousands)
        {
            draft.Mapping = draft.Mapping with { Text = draft.Mapping.Text with { Thousands = thousands } };
            draft.Say("text.thousands", thousands.ToString(), 0.85, "stands between groups of three digits");
        }

        var readings = LongFormGuess.Find(file, variables, draft);
        var wide = readings is null ? variables : [];
        var values = draft.Mapping.Values;
        var roles = ColumnAssigner.Assign(file with { Columns = [.. file.Columns.Except(readings ?? [])] }, wide, draft);
        draft.Mapping = draft.Mapping with
        {
            Values = readings is null ? draft.Mapping.Values : values,
            Participant = Field(roles, ColumnRole.Participant),
            Sequence = Field(roles, ColumnRole.Sequence),
            Phase = Field(roles, ColumnRole.Phase),
        };
        RowRuleGuess.Find(document, file, draft);
        TimeGuess.Find(document, roles, zone, draft);
        Meaning(file, dictionary, draft);
    }

    private static FieldSource? Field(IReadOnlyDictionary<ColumnRole, ColumnProfile> roles, ColumnRole role) =>
        roles.TryGetValue(role, out var column) ? new FieldSource { Column = column.Heading.Name } : null;

    /// <summary>Sessions hold more values of a session than of a swing, and do not count swings; moments come faster than swings and without a number.</summary>
    private static void Meaning(FileProfile file, VariableDictionary dictionary, Draft draft)
    {
        var mapped = draft.Mapping.Values.Keys.Select(name => dictionary[name]).ToList();
        var measured = mapped.Count(variable => variable.Level == VariableLevel.Swing && variable.Type == VariableType.Number);
        var ofSession = mapped.Count(variable => variable.Level == VariableLevel.Session);
        if (ofSession > measured && draft.Mapping is { Participant: not null, Sequence: null, LongForm: null })
        {
            draft.Mapping = draft.Mapping with { Rows = RowMeaning.Sessions };
            draft.Say("rows", "sessions", measured == 0 ? 0.85 : 0.6, $"no number of a swing; {ofSession} values of a session, {measured} of a swing");
            return;
        }

        if (draft.Mapping.Phase is { } phase)
        {
            draft.Mapping = draft.Mapping with { Phase = null, Ignore = [.. draft.Mapping.Ignore, phase.Column!] };
            draft.Lines.RemoveAll(line => line.Key == "phase");
            draft.Say($"ignore.{phase.Column}", phase.Column!, 0.7, "the phase of a swing comes from its session");
        }

        if (draft.Mapping is { Sequence: null, LongForm: null } && draft.Mapping.Time.Format is "unix-ms" or "unix-s" && measured <= 2 && file.Rows >= 20)
        {
            draft.Mapping = draft.Mapping with { Rows = RowMeaning.Moments, Window = new MomentWindow(-3, 0) };
            draft.Say("rows", "moments", 0.7, "times without a number, and hardly a value: a stream");
            draft.Say("window", "-3 to 0", 0.2, "a guess: the seconds before impact");
            return;
        }

        draft.Say("rows", "swings", measured > 0 ? 0.9 : 0.4, $"{measured} measured values of a swing");
    }

    private static string Kebab(string text)
    {
        var name = NoLetters().Replace(string.Join('-', HeadingWords.Of(text)), "-").Trim('-');
        return name.Length == 0 || !char.IsAsciiLetterLower(name[0]) ? $"source-{name}".Trim('-') : name;
    }

    [GeneratedRegex("[^a-z0-9]+", RegexOptions.CultureInvariant)]
    private static partial Regex NoLetters();
}
