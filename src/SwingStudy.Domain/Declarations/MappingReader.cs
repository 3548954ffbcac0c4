using SwingStudy.Domain.Declarations.Yaml;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Sources;
using SwingStudy.Domain.Variables;

namespace SwingStudy.Domain.Declarations;

/// <summary>Reads source mappings.</summary>
public static class MappingReader
{
    /// <summary>Reads all mappings (<c>*.yaml</c>) of a folder in the order of their names, or tells the problems of all of them.</summary>
    public static Outcome<IReadOnlyList<SourceMapping>> ReadAll(string folder, VariableDictionary dictionary)
    {
        if (!Directory.Exists(folder))
            return Messages.FolderMissing(folder);
        var mappings = new List<SourceMapping>();
        var problems = new List<Problem>();
        foreach (var path in Directory.EnumerateFiles(folder, "*.yaml").Order(StringComparer.Ordinal))
        {
            var read = Read(path, dictionary);
            if (read.Succeeded(out var mapping))
                mappings.Add(mapping);
            else
                problems.AddRange(read.Problems);
        }

        return problems.Count > 0
            ? Outcome<IReadOnlyList<SourceMapping>>.Failed(problems)
            : Outcome<IReadOnlyList<SourceMapping>>.Of(mappings);
    }

    /// <summary>Reads one mapping, or tells all its problems with file and line.</summary>
    public static Outcome<SourceMapping> Read(string file, VariableDictionary dictionary)
    {
        var read = YamlFile.Read(file, "the mapping");
        if (!read.Succeeded(out var yaml))
            return Outcome<SourceMapping>.Failed(read.Problems);
        var root = yaml.Root;
        var files = root.Text("files", "a pattern for the names of its files");
        var rows = root.Choice<RowMeaning>("rows", "swings, moments, sessions or recordings");
        var fields = new FieldReader(GroupsOf(root, files), rows == RowMeaning.Recordings && root.Has("index"));
        var recordings = rows == RowMeaning.Recordings ? new RecordingReader(root, fields) : null;
        var mapping = new SourceMapping
        {
            Source = Names.Kebab(root, "source", "bay-strike"),
            Title = root.Text("title", "what a person calls it"),
            Device = Names.Kebab(root, "device", "bay1-strike"),
            Rows = rows,
            Reader = root.Choice<ReaderKind>("reader", "delimited, workbook, json, ndjson or c3d"),
            Files = files,
            Text = MappingParts.Text(root),
            Layout = MappingParts.Layout(root),
            LongForm = MappingParts.LongForm(root),
            Missing = root.Texts("missing"),
            NotData = MappingParts.Rules(root, "not_data"),
            Practice = MappingParts.Rules(root, "practice"),
            BadCells = root.OptionalChoice<BadCellPolicy>("bad_cells") ?? BadCellPolicy.RejectCell,
            Participant = root.OptionalMap("participant", "'participant'") is { } participant ? fields.Text(participant, hasWords: false) : null,
            Time = TimeRuleReader.Read(root, fields),
            Sequence = root.OptionalMap("sequence", "'sequence'") is { } sequence ? fields.Text(sequence, hasWords: false) : null,
            Phase = root.OptionalMap("phase", "'phase'") is { } phase ? fields.Text(phase, hasWords: true) : null,
            Values = recordings is null ? Values(root, fields, dictionary) : new Dictionary<string, FieldSource>(),
            Ignore = root.Texts("ignore"),
            Consent = MappingParts.Consent(root),
            Window = MappingParts.Window(root),
            Recording = recordings?.Rule(),
            Plates = recordings?.Plates() ?? new Dictionary<string, PlateGeometry>(),
            Index = recordings?.Index(),
            File = file,
            Hash = yaml.Hash,
        };
        root.Done();
        CheckTogether(root, mapping);
        recordings?.Check(mapping);
        return yaml.Problems.Any ? Outcome<SourceMapping>.Failed(yaml.Problems.InFileOrder) : mapping;
    }

    private static IReadOnlyCollection<string> GroupsOf(YamlMap root, string files)
    {
        if (Patterns.Fault(files) is { } fault)
        {
            root.Note(DeclarationMessages.PatternInvalid(root.PlaceOf("files"), "files", files, fault));
            return [];
        }

        return [.. Patterns.GroupNames(files).Where(name => !char.IsAsciiDigit(name[0]))];
    }

    private static Dictionary<string, FieldSource> Values(YamlMap root, FieldReader fields, VariableDictionary dictionary)
    {
        var values = new Dictionary<string, FieldSource>(StringComparer.Ordinal);
        if (root.Map("values", "'values'", "variables of the dictionary and where they stand") is not { } map)
            return values;
        foreach (var name in map.Keys)
        {
            var field = map.OptionalMap(name, $"'{name}'");
            if (!dictionary.TryGet(name, out var variable))
                map.Note(DeclarationMessages.VariableUnknown(map.PlaceOf(name), name, dictionary));
            else if (variable.Level == VariableLevel.Participant)
                map.Note(DeclarationMessages.LevelParticipant(map.PlaceOf(name), name));
            else if (field is not null)
                values[name] = fields.Value(field, variable);
        }

        return values;
    }

    private static void CheckTogether(YamlMap root, SourceMapping mapping)
    {
        if (mapping.Rows != RowMeaning.Recordings && mapping.Reader == ReaderKind.C3d)
            root.Note(DeclarationMessages.OnlyWith(root.PlaceOf("reader"), "c3d", "only with 'rows: recordings'"));
        if (mapping.Rows == RowMeaning.Sessions && mapping.Participant is null)
            root.Note(DeclarationMessages.NeededWith(root.PlaceOf("rows"), "the mapping", "participant", "where the player's name stands, because a session is a player's"));
        if (mapping.Rows != RowMeaning.Sessions && mapping.Phase is not null)
            root.Note(DeclarationMessages.OnlyWith(root.PlaceOf("phase"), "phase", "only with 'rows: sessions'"));
        if (mapping.Rows != RowMeaning.Moments && mapping.Window is not null)
            root.Note(DeclarationMessages.OnlyWith(root.PlaceOf("window"), "window", "only with 'rows: moments'"));
        if (mapping.Rows == RowMeaning.Moments && mapping.Window is null && !root.Has("window"))
            root.Note(DeclarationMessages.NeededWith(root.PlaceOf("rows"), "the mapping", "window", "the seconds around impact that belong to a swing, because rows are moments"));
        if (mapping.Reader is not (ReaderKind.Delimited or ReaderKind.Workbook) && root.Has("layout") && mapping.Layout is { Sheet: null, Records: null })
            root.Note(DeclarationMessages.OnlyWith(root.PlaceOf("layout"), "layout", "with heading rows only for delimited text and workbooks"));
        if (mapping.Reader != ReaderKind.Workbook && mapping.Layout.Sheet is not null)
            root.Note(DeclarationMessages.OnlyWith(root.PlaceOf("layout"), "sheet", "only with 'reader: workbook'"));
        if (mapping.Reader != ReaderKind.Json && mapping.Layout.Records is not null)
            root.Note(DeclarationMessages.OnlyWith(root.PlaceOf("layout"), "records", "only with 'reader: json'"));
    }
}
