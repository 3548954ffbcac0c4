using System.Text;
using SwingStudy.Domain.Declarations.Yaml;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.People;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Sources;

namespace SwingStudy.Domain.Declarations;

/// <summary>Reads the parts of a mapping that do not depend on the dictionary.</summary>
internal static class MappingParts
{
    public static TextFormat Text(YamlMap root)
    {
        if (root.OptionalMap("text", "'text'") is not { } map)
            return new();
        var text = new TextFormat
        {
            Encoding = map.OptionalText("encoding"),
            Delimiter = FieldReader.Character(map, "delimiter"),
            Decimal = FieldReader.DecimalSign(map),
            Thousands = FieldReader.Character(map, "thousands"),
        };
        map.Done();
        if (text.Encoding is { } name && !IsEncoding(name))
            map.Note(DeclarationMessages.EncodingUnknown(map.PlaceOf("encoding"), name));
        if (text.Decimal is not null && text.Decimal == text.Thousands)
        {
            map.Note(new Problem(
                "signs-clash",
                map.PlaceOf("thousands"),
                "'decimal' and 'thousands' are the same sign",
                "two different signs",
                "Correct one of them."));
        }

        return text;
    }

    public static Layout Layout(YamlMap root)
    {
        if (root.OptionalMap("layout", "'layout'") is not { } map)
            return new();
        var headings = map.OptionalCount("headings", 0) ?? 1;
        if (headings > 2)
            map.Note(Messages.OutOfRange(map.PlaceOf("headings"), "headings", headings, "0, 1 or 2 heading rows"));
        var layout = new Layout
        {
            PreambleRows = map.OptionalCount("preamble", 0),
            HeadingRows = headings,
            UnitsRow = map.OptionalFlag("units_row"),
            Sheet = map.OptionalText("sheet"),
            Records = map.OptionalText("records"),
        };
        map.Done();
        return layout;
    }

    public static LongForm? LongForm(YamlMap root)
    {
        if (root.OptionalMap("long", "'long'") is not { } map)
            return null;
        var form = new LongForm(
            map.Text("name", "the column with the reading's name"),
            map.Text("value", "the column with its value"),
            map.OptionalText("unit"));
        map.Done();
        return form;
    }

    public static IReadOnlyList<RowRule> Rules(YamlMap root, string key)
    {
        var rules = new List<RowRule>();
        foreach (var map in root.Maps(key, "the row rule", "label"))
        {
            var label = map.Text("label", "what such rows are");
            var conditions = map.Maps("when", "the condition", "column");
            if (conditions.Count == 0)
                map.Note(DeclarationMessages.NeededWith(map.PlaceOf("when"), map.Subject, "when", "at least one condition on a cell"));
            rules.Add(new(label, [.. conditions.Select(Condition)]));
            map.Done();
        }

        return rules;
    }

    /// <summary>Scopes of consent; research where nothing is said. An empty list would let anything in, so it is no choice.</summary>
    public static IReadOnlyList<ConsentScope> Consent(YamlMap root)
    {
        var words = Word.All<ConsentScope>();
        var named = root.Texts("consent");
        foreach (var unknown in named.Where(word => !words.Contains(word)))
            root.Note(Messages.WordUnknown(root.PlaceOf("consent"), "consent", unknown, words));
        IReadOnlyList<ConsentScope> scopes = [.. Enum.GetValues<ConsentScope>().Where(scope => named.Contains(Word.Of(scope)))];
        return scopes.Count > 0 ? scopes : [ConsentScope.Research];
    }

    public static MomentWindow? Window(YamlMap root)
    {
        if (root.OptionalMap("window", "'window'") is not { } map)
            return null;
        var window = new MomentWindow(map.Number("from_s", "seconds from impact, negative before"), map.Number("to_s", "seconds from impact"));
        map.Done();
        if (window.FromSeconds > window.ToSeconds)
            map.Note(new Problem(
                "range-order",
                map.PlaceOf("from_s"),
                "'window' ends before it starts",
                "from_s at most to_s",
                "Swap the two."));
        return window;
    }

    private static CellCondition Condition(YamlMap map)
    {
        var condition = new CellCondition(
            map.OptionalText("column"),
            map.Has("is") ? map.Texts("is") : null,
            map.OptionalText("matches"),
            map.OptionalFlag("missing"));
        map.Done();
        if (condition.Matches is { } pattern && Patterns.Fault(pattern) is { } fault)
            map.Note(DeclarationMessages.PatternInvalid(map.PlaceOf("matches"), "matches", pattern, fault));
        if (!map.Has("is") && !map.Has("matches") && !map.Has("missing"))
            map.Note(DeclarationMessages.NeededWith(map.PlaceOf("column"), map.Subject, "is", "at least one of is, matches, missing"));
        return condition;
    }

    private static bool IsEncoding(string name)
    {
        if (name == "utf-8" || CodePagesEncodingProvider.Instance.GetEncoding(name) is not null)
            return true;
        try
        {
            Encoding.GetEncoding(name);
            return true;
        }
        catch (ArgumentException)
        {
            return false;
        }
    }
}
