using SwingStudy.Domain.Sources;
using SwingStudy.Domain.Units;

namespace SwingStudy.Ingestion.Suggest;

/// <summary>Recognises exports with one row a reading.</summary>
internal static class LongFormGuess
{
    private const double KnownShare = 0.6;
    private const double Clear = 0.8;

    /// <summary>Fills long form and values of the draft and returns its columns; null when rows are wide.</summary>
    public static IReadOnlyList<ColumnProfile>? Find(FileProfile file, IReadOnlyList<VariableNames> variables, Draft draft)
    {
        var value = Best(file.Columns.Where(column => column.IsNumeric), ColumnRole.ReadingValue);
        if (value is null)
            return null;
        foreach (var name in file.Columns.Where(column => column is { IsNumeric: false, IsClock: false } && column.Texts.Count is >= 2 and <= 200 && column.TimeFormats.Count == 0))
        {
            var known = name.Texts.Keys.Select(text => (Text: text, Best: Nearest(text, variables))).Where(pair => pair.Best.Likeness >= Clear).ToList();
            if (known.Count < 2 || known.Count < KnownShare * name.Texts.Count)
                continue;
            var unit = file.Columns.FirstOrDefault(column => column != name && column.Texts.Count > 0 && column.Texts.Keys.All(text => UnitCatalogue.TryParse(text, out _)));
            var values = new Dictionary<string, FieldSource>(StringComparer.Ordinal);
            foreach (var (text, best) in known.OrderByDescending(pair => pair.Best.Likeness))
            {
                if (values.TryAdd(best.Names.Variable.Name, new FieldSource { Column = text }))
                    draft.Say($"values.{best.Names.Variable.Name}", text, Math.Round(0.95 * best.Likeness, 2), $"reading is like '{best.Name}' ({best.Likeness:F2})");
            }

            draft.Mapping = draft.Mapping with { LongForm = new LongForm(name.Heading.Name, value.Heading.Name, unit?.Heading.Name), Values = values };
            draft.Say("long.name", name.Heading.Name, 0.9, $"{known.Count} of {name.Texts.Count} different texts are names of variables");
            draft.Say("long.value", value.Heading.Name, 0.9, "heading names a value; cells are numbers");
            if (unit is not null)
                draft.Say("long.unit", unit.Heading.Name, 0.95, "all cells are units");
            return [name, value, .. unit is null ? Array.Empty<ColumnProfile>() : [unit]];
        }

        return null;
    }

    private static ColumnProfile? Best(IEnumerable<ColumnProfile> columns, ColumnRole role) => columns
        .Select(column => (Column: column, Likeness: RoleWords.Likeness(column, role)))
        .Where(pair => pair.Likeness >= Clear)
        .OrderByDescending(pair => pair.Likeness)
        .Select(pair => pair.Column)
        .FirstOrDefault();

    private static (VariableNames Names, double Likeness, string Name) Nearest(string text, IReadOnlyList<VariableNames> variables)
    {
        var words = HeadingWords.Of(text);
        return variables.Select(names => (Names: names, Best: names.Likeness(words)))
            .Select(pair => (pair.Names, pair.Best.Likeness, pair.Best.Name))
            .MaxBy(triple => triple.Likeness);
    }
}
