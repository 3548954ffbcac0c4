using System.Globalization;
using System.Text;
using SwingStudy.Domain.Sources;

namespace SwingStudy.Ingestion.Suggest;

/// <summary>Writes a draft as a declaration, with a comment behind each line that is a guess.</summary>
internal sealed partial class DraftYaml
{
    private readonly StringBuilder _text = new();
    private readonly IReadOnlyList<SuggestedLine> _lines;

    private DraftYaml(IReadOnlyList<SuggestedLine> lines) => _lines = lines;

    /// <summary>The declaration.</summary>
    public static string Of(SourceMapping mapping, IReadOnlyList<SuggestedLine> lines, string file)
    {
        var yaml = new DraftYaml(lines);
        yaml.Head(mapping, file);
        yaml.Rows(mapping);
        if (mapping.Recording is { } rule)
            yaml.Recordings(mapping, rule);
        else
            yaml.Fields(mapping);
        return yaml._text.ToString();
    }

    private void Head(SourceMapping mapping, string file)
    {
        Line(0, $"# Drafted from {Path.GetFileName(file)}. Check each line: the number behind it says how sure it is, from 0 (a guess) to 1.");
        Line(0, $"source: {mapping.Source}", "source");
        Line(0, $"title: {Quoted(mapping.Title)}", "title");
        Line(0, $"device: {mapping.Device}", "device");
        Line(0, $"rows: {Word(mapping.Rows)}", "rows");
        Line(0, $"reader: {Word(mapping.Reader)}", "reader");
        Line(0, $"files: {Quoted(mapping.Files)}", "files");
        List<(string Text, string Key)> text = [];
        if (mapping.Text.Encoding is { } encoding)
            text.Add(($"encoding: {encoding}", "text.encoding"));
        if (mapping.Text.Delimiter is { } delimiter)
            text.Add(($"delimiter: {Quoted(delimiter.ToString())}", "text.delimiter"));
        if (mapping.Text.Decimal is { } sign)
            text.Add(($"decimal: {Quoted(sign.ToString())}", "text.decimal"));
        if (mapping.Text.Thousands is { } thousands)
            text.Add(($"thousands: {Quoted(thousands.ToString())}", "text.thousands"));
        Block("text:", text);
        List<(string Text, string Key)> layout = [];
        if (mapping.Layout.PreambleRows is { } preamble)
            layout.Add(($"preamble: {preamble}", "layout.preamble"));
        if (mapping.Layout.HeadingRows != 1)
            layout.Add(($"headings: {mapping.Layout.HeadingRows}", "layout.headings"));
        if (mapping.Layout.Sheet is { } sheet)
            layout.Add(($"sheet: {Quoted(sheet)}", "layout.sheet"));
        if (mapping.Layout.Records is { } records)
            layout.Add(($"records: {Quoted(records)}", "layout.records"));
        Block("layout:", layout);
        if (mapping.LongForm is { } form)
        {
            Block("long:", [
                ($"name: {Quoted(form.NameColumn)}", "long.name"),
                ($"value: {Quoted(form.ValueColumn)}", "long.value"),
                .. form.UnitColumn is { } unit ? new[] { ($"unit: {Quoted(unit)}", "long.unit") } : []]);
        }
    }

    private void Rows(SourceMapping mapping)
    {
        if (mapping.Missing.Count > 0)
            Line(0, $"missing: {List(mapping.Missing)}", "missing");
        Rules("not_data", mapping.NotData);
        Rules("practice", mapping.Practice);
        if (mapping.Participant is { } participant)
            Line(0, $"participant: {Field(participant)}", "participant");
        else
            Note("participant");
        Line(0, "time:");
        if (mapping.Time.Parts.Count == 0)
            Note("time.parts");
        else
            Line(2, $"parts: [{string.Join(", ", mapping.Time.Parts.Select(Field))}]", "time.parts");
        if (mapping.Time.Format is { } format)
            Line(2, $"format: {Quoted(format)}", "time.format");
        else
            Note("time.format");
        if (mapping.Time.Zone is { } zone)
            Line(2, $"zone: {zone}", "time.zone");
        else
            Note("time.zone");
        if (mapping.Sequence is { } sequence)
            Line(0, $"sequence: {Field(sequence)}", "sequence");
        if (mapping.Phase is { } phase)
            Line(0, $"phase: {Field(phase)}", "phase");
        if (mapping.Window is { } window)
            Line(0, $"window: {{ from_s: {Number(window.FromSeconds)}, to_s: {Number(window.ToSeconds)} }}", "window");
    }

    private void Fields(SourceMapping mapping)
    {
        Line(0, mapping.Values.Count == 0 ? "values: {}" : "values:");
        foreach (var (name, field) in mapping.Values)
            Line(2, $"{name}: {Field(field)}", $"values.{name}");
        Ignored(mapping);
    }

    private void Ignored(SourceMapping mapping)
    {
        if (mapping.Ignore.Count == 0)
            return;
        Line(0, "ignore:");
        foreach (var name in mapping.Ignore)
            Line(2, $"- {Quoted(name)}", $"ignore.{name}");
    }

    private void Rules(string key, IReadOnlyList<RowRule> rules)
    {
        if (rules.Count == 0)
            return;
        Line(0, $"{key}:", key);
        foreach (var rule in rules)
        {
            var conditions = rule.Conditions.Select(condition =>
                $"{{ {(condition.Column is { } column ? $"column: {Quoted(column)}, " : "")}is: {List(condition.Is ?? [])} }}");
            Line(2, $"- {{ label: {rule.Label}, when: [{string.Join(", ", conditions)}] }}");
        }
    }

    private void Block(string head, List<(string Text, string Key)> lines)
    {
        if (lines.Count == 0)
            return;
        Line(0, head);
        foreach (var (text, key) in lines)
            Line(2, text, key);
    }

    /// <summary>What is not known stands as a comment where the line would be.</summary>
    private void Note(string key)
    {
        foreach (var line in _lines.Where(line => line.Key == key))
            Line(0, $"# {key}: {OneLine(line.Reason)}");
    }

    private void Line(int indent, string text, string? key = null)
    {
        _text.Append(' ', indent).Append(text);
        var said = _lines.Where(line => line.Key == key).ToList();
        if (said.Count > 0)
            _text.Append(CultureInfo.InvariantCulture, $"  # {said.Min(line => line.Confidence):0.00}: {OneLine(string.Join("; ", said.Select(line => line.Reason)))}");
        _text.Append('\n');
    }

    private static string Field(FieldSource field)
    {
        List<string> parts = [field switch
        {
            { Column: { } column } => $"column: {Quoted(column)}",
            { Preamble: { } preamble } => $"preamble: {Quoted(preamble)}",
            { FileGroup: { } group } => $"file: {group}",
            _ => $"constant: {Quoted(field.Constant ?? "")}",
        }];
        if (field.Unit is { } unit)
            parts.Add($"unit: {Quoted(unit)}");
        if (field.HasUnitInCells)
            parts.Add($"unit: {FieldSource.UnitInCells}");
        if (field.Signs.Count > 0)
            parts.Add($"signs: {{ {string.Join(", ", field.Signs.Select(pair => $"{Quoted(pair.Key)}: {(pair.Value ? "minus" : "plus")}"))} }}");
        if (field.Mirror)
            parts.Add("mirror: true");
        if (field.Missing.Count > 0)
            parts.Add($"missing: {List(field.Missing)}");
        return $"{{ {string.Join(", ", parts)} }}";
    }

    private static string List(IEnumerable<string> texts) => $"[{string.Join(", ", texts.Select(Quoted))}]";

    private static string Word<T>(T value)
        where T : struct, Enum => value.ToString().ToLowerInvariant();

    private static string Number(double number) => number.ToString(CultureInfo.InvariantCulture);

    private static string OneLine(string text) => string.Join(' ', text.Split((char[])['\r', '\n', '\t'], StringSplitOptions.RemoveEmptyEntries));

    private static string Quoted(string text)
    {
        var quoted = new StringBuilder("\"");
        foreach (var sign in text)
        {
            quoted.Append(sign switch
            {
                '"' => "\\\"",
                '\\' => "\\\\",
                '\t' => "\\t",
                '\n' => "\\n",
                '\r' => "\\r",
                _ when char.IsControl(sign) => $"\\u{(int)sign:X4}",
                _ => sign.ToString(),
            });
        }

        return quoted.Append('"').ToString();
    }
}
