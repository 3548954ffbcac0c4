using System.Globalization;
using SwingStudy.Domain.Identifiers;

namespace SwingStudy.Domain.Variables;

/// <summary>Differences between two definitions of one variable, each with its weight.</summary>
internal static class VariableComparison
{
    private const string OtherMeaning = "stored values mean something else";
    private const string Shown = "it is shown otherwise; stored values stay";
    private const string Explained = "it is explained otherwise";

    public static IEnumerable<DictionaryChange> Between(Variable old, Variable now) => ((DictionaryChange?[])
    [
        Text("type", Word.Of(old.Type), Word.Of(now.Type), ChangeWeight.Major, OtherMeaning),
        Text("unit", old.Unit, now.Unit, ChangeWeight.Major, "stored numbers are in the old unit"),
        Text("scale", Word.Of(old.Scale), Word.Of(now.Scale), ChangeWeight.Major, "other statistics make sense"),
        Text("level", Word.Of(old.Level), Word.Of(now.Level), ChangeWeight.Major, OtherMeaning),
        Text("axis", old.Axis, now.Axis, ChangeWeight.Major, "signs may mean the opposite; if only words changed, keep the old words"),
        Text("formula", old.Formula, now.Formula, ChangeWeight.Major, "derived values come out differently"),
        Text("definition", old.Definition, now.Definition, ChangeWeight.Major, "results under different definitions are never pooled"),
        Text("better", Word.Of(old.Better), Word.Of(now.Better), ChangeWeight.Major, "findings may turn round"),
        Text("target", Number(old.Target), Number(now.Target), ChangeWeight.Major, "findings may turn round"),
        Text("zero_is_missing", old.ZeroIsMissing ? "true" : "false", now.ZeroIsMissing ? "true" : "false", ChangeWeight.Major, "zeros are taken otherwise"),
        Limit("constraints.minimum", old.Minimum, now.Minimum, narrower: (now.Minimum ?? double.NegativeInfinity) > (old.Minimum ?? double.NegativeInfinity)),
        Limit("constraints.maximum", old.Maximum, now.Maximum, narrower: (now.Maximum ?? double.PositiveInfinity) < (old.Maximum ?? double.PositiveInfinity)),
        Words(old, now),
        Text("typical", Range(old.Typical), Range(now.Typical), ChangeWeight.Minor, "other values are flagged"),
        Text("display_unit", old.DisplayUnit, now.DisplayUnit, ChangeWeight.Minor, Shown),
        Text("group", old.Group, now.Group, ChangeWeight.Minor, Shown),
        Text("synonyms", string.Join(", ", old.Synonyms), string.Join(", ", now.Synonyms), ChangeWeight.Minor, "other headings are recognised in new exports"),
        Text("title", old.Title, now.Title, ChangeWeight.Patch, Explained),
        Text("description", old.Description, now.Description, ChangeWeight.Patch, Explained),
        Text("reference", old.Reference, now.Reference, ChangeWeight.Patch, Explained),
        Text("constraints.basis", old.PossibleBasis, now.PossibleBasis, ChangeWeight.Patch, Explained),
        Text("typical.basis", old.Typical?.Basis, now.Typical?.Basis, ChangeWeight.Patch, Explained),
        Text("typical.note", old.Typical?.Note, now.Typical?.Note, ChangeWeight.Patch, Explained),
    ]).OfType<DictionaryChange>().Select(change => change with { Variable = old.Name });

    private static DictionaryChange? Text(string property, string? before, string? after, ChangeWeight weight, string consequence) =>
        before == after ? null : new("", property, before, after, weight, consequence);

    private static DictionaryChange? Limit(string property, double? before, double? after, bool narrower) => before == after
        ? null
        : new(
            "",
            property,
            Number(before),
            Number(after),
            narrower ? ChangeWeight.Major : ChangeWeight.Minor,
            narrower ? "values taken before would be nulled now" : "values nulled before would be taken now");

    private static DictionaryChange? Words(Variable old, Variable now)
    {
        if (old.Words.SequenceEqual(now.Words))
            return null;
        var gone = old.Words.Except(now.Words).ToList();
        return new(
            "",
            "constraints.enum",
            string.Join(", ", old.Words),
            string.Join(", ", now.Words),
            gone.Count > 0 ? ChangeWeight.Major : ChangeWeight.Minor,
            gone.Count > 0 ? "stored words are no longer allowed: " + string.Join(", ", gone) : "words were added or stand in another order");
    }

    private static string? Range(TypicalRange? range) => range is null ? null : $"{Number(range.Low)} to {Number(range.High)}";

    private static string? Number(double? value) => value?.ToString("R", CultureInfo.InvariantCulture);
}
