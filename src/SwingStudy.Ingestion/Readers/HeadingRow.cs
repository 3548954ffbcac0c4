using SwingStudy.Domain.Problems;

namespace SwingStudy.Ingestion.Readers;

/// <summary>The headings of a document, to be addressed by name or by position.</summary>
public sealed class HeadingRow
{
    private readonly Dictionary<string, int> _byName = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, int> _byBareName = new(StringComparer.OrdinalIgnoreCase);

    private HeadingRow(IReadOnlyList<Heading> headings, IReadOnlyList<string> bareNames)
    {
        Headings = headings;
        foreach (var heading in headings)
        {
            _byName.TryAdd(heading.Name, heading.Position);
            _byBareName.TryAdd(bareNames[heading.Position], heading.Position);
        }
    }

    /// <summary>All headings, in the order of the columns.</summary>
    public IReadOnlyList<Heading> Headings { get; }

    /// <summary>Texts of the units row; null when there is none.</summary>
    internal IReadOnlyList<string>? UnitTexts { get; private init; }

    /// <summary>
    /// The column of that heading, ignoring case and surrounding blanks; null when there is none. A heading with a unit in brackets is also found
    /// without it: <c>Carry</c> finds <c>Carry (m)</c>, and <c>Angle#2</c> the second of two columns <c>Angle (deg)</c>.
    /// </summary>
    public Heading? Find(string name)
    {
        var clean = HeadingText.Clean(name);
        return _byName.TryGetValue(clean, out var position) || _byBareName.TryGetValue(clean, out position) ? Headings[position] : null;
    }

    /// <summary>Takes the texts of the headings and, where there is one, of the units row.</summary>
    internal static HeadingRow From(IReadOnlyList<string> texts, IReadOnlyList<string>? units)
    {
        var clean = texts.Select(HeadingText.Clean).ToArray();
        var names = Distinct(clean);
        var bareNames = Distinct([.. clean.Select(text => HeadingText.SplitUnit(text).Bare)]);
        var headings = new Heading[clean.Length];
        for (var i = 0; i < clean.Length; i++)
        {
            var unit = units is not null && i < units.Count ? HeadingText.WithoutBrackets(units[i]) : "";
            headings[i] = new Heading(i, names[i], clean[i], unit.Length > 0 ? unit : HeadingText.SplitUnit(clean[i]).Unit);
        }

        return new HeadingRow(headings, bareNames) { UnitTexts = units };
    }

    /// <summary>Headings by position alone, <c>#1</c>, <c>#2</c> and so on, for text without headings.</summary>
    internal static HeadingRow ByPosition(int columns) =>
        new(
            [.. Enumerable.Range(0, columns).Select(i => new Heading(i, $"#{i + 1}", "", null))],
            [.. Enumerable.Range(0, columns).Select(i => $"#{i + 1}")]);

    /// <summary>Notices about headings that were cleaned or that occur more than once.</summary>
    internal static IEnumerable<Problem> Notices(string file, int line, HeadingRow row, IReadOnlyList<string> texts)
    {
        for (var i = 0; i < texts.Count; i++)
        {
            if (HeadingText.HoldsInvisible(texts[i]))
                yield return ReaderMessages.HeadingCleaned(new Place(file, line, row.Headings[i].Name), texts[i]);
            if (row.Headings[i].Name != row.Headings[i].Text && row.Headings[i].Text.Length > 0)
                yield return ReaderMessages.HeadingRepeated(new Place(file, line, row.Headings[i].Name), row.Headings[i].Text);
        }
    }

    /// <summary>Numbers what occurs again, never with a name that a column has of its own.</summary>
    private static string[] Distinct(string[] texts)
    {
        var own = new HashSet<string>(texts, StringComparer.OrdinalIgnoreCase);
        var taken = new Dictionary<string, int>(StringComparer.OrdinalIgnoreCase);
        var names = new string[texts.Length];
        for (var i = 0; i < texts.Length; i++)
        {
            var number = taken.TryGetValue(texts[i], out var last) ? last + 1 : 1;
            while (number > 1 && own.Contains($"{texts[i]}#{number}"))
                number++;
            taken[texts[i]] = number;
            names[i] = number == 1 ? texts[i] : $"{texts[i]}#{number}";
        }

        return names;
    }
}
