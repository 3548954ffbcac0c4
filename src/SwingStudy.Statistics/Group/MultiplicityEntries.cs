using SwingStudy.Statistics.Catalogue;

namespace SwingStudy.Statistics.Group;

/// <summary>The catalogue entries of p values adjusted for looking at several outcomes.</summary>
internal static class MultiplicityEntries
{
    private delegate double[] Adjustment(ReadOnlySpan<double> p);

    public static IReadOnlyList<StatisticDefinition> All { get; } =
    [
        Entry("p-adjusted-bonferroni", "p values by Bonferroni", "min(1, m p).", "Holds the family error under any dependence.", "holm-1979", Multiplicity.Bonferroni),
        Entry("p-adjusted-holm", "p values by Holm, step-down", "Largest of (m − i + 1) p₍ᵢ₎ so far.", "Holds the family error under any dependence.", "holm-1979", Multiplicity.Holm),
        Entry("p-adjusted-hochberg", "p values by Hochberg, step-up", "Smallest of (m − i + 1) p₍ᵢ₎ from above.", "Tests are independent or positively dependent.", "hochberg-1988", Multiplicity.Hochberg),
        Entry("p-adjusted-benjamini-hochberg", "p values by Benjamini and Hochberg, share of false findings", "Smallest of m p₍ᵢ₎/i from above.", "Tests are independent or positively dependent.", "benjamini-hochberg-1995", Multiplicity.BenjaminiHochberg),
        Entry("p-adjusted-benjamini-yekutieli", "p values by Benjamini and Yekutieli, share of false findings", "Smallest of m (Σ 1/j) p₍ᵢ₎/i from above.", "Holds under any dependence.", "benjamini-yekutieli-2001", Multiplicity.BenjaminiYekutieli),
    ];

    private static StatisticDefinition Entry(string name, string title, string what, string assumption, string citation, Adjustment adjust) => new()
    {
        Name = name,
        Title = title,
        Symbol = "p",
        Family = StatisticFamily.Group,
        What = $"{what} Values are p values; one row each in the order given, named by the subject column when there is one.",
        Needs = InputColumns.Value,
        Direction = EffectDirection.None,
        LowerBound = 0,
        UpperBound = 1,
        Assumptions = ["All tests looked at are in the table.", assumption],
        CitationKeys = [citation],
        Computation = input =>
        {
            if (input.Values.Count == 0 || input.Values.Any(p => p is < 0 or > 1))
                return ResultRow.None("needs at least one p value, each from 0 to 1");
            return [.. adjust([.. input.Values]).Select((p, row) => ResultRow.Of(
                input.Subjects is { } names ? names[row] : $"row-{row + 1}", p))];
        },
    };
}
