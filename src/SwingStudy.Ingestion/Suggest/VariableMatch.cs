using SwingStudy.Domain.Variables;

namespace SwingStudy.Ingestion.Suggest;

/// <summary>A variable that a column may hold.</summary>
/// <param name="Column">The column.</param>
/// <param name="Variable">The variable.</param>
/// <param name="Unit">Its unit and fit.</param>
/// <param name="Confidence">0 to 1.</param>
/// <param name="Reason">What it rests on.</param>
internal sealed record VariableMatch(ColumnProfile Column, Variable Variable, UnitGuess Unit, double Confidence, string Reason)
{
    /// <summary>Below this a column is left out of the draft, with the guess in a comment.</summary>
    public const double Threshold = 0.55;

    /// <summary>Takes away from confidence where brackets hold something that is no known unit.</summary>
    private const double UnknownBrackets = 0.6;

    private const double LeastLikeness = 0.5;

    /// <summary>All matches of one column worth thinking of, the best first.</summary>
    public static IReadOnlyList<VariableMatch> Of(ColumnProfile column, IReadOnlyList<VariableNames> variables)
    {
        if (column.Filled == column.Missing && column.Filled + column.Errors > 0)
            return [];
        var sorted = column.Sorted();
        return [.. variables.Select(names => Of(column, names, sorted)).OfType<VariableMatch>().OrderByDescending(match => match.Confidence)];
    }

    private static VariableMatch? Of(ColumnProfile column, VariableNames names, double[] sorted)
    {
        var (likeness, word) = names.Likeness(column.Words);
        var isNumber = names.Variable.Type is VariableType.Number or VariableType.Integer;
        if (likeness < LeastLikeness || (column.Filled > 0 && isNumber != column.IsNumeric && (isNumber || names.Variable.Type == VariableType.Category)))
            return null;
        if (UnitGuess.For(column, names.Variable, sorted) is not { } unit)
            return null;
        var name = likeness >= 0.999 ? $"heading is '{word}'" : $"heading is like '{word}' ({likeness:F2})";
        if (!isNumber)
            return new(column, names.Variable, unit, Math.Round(0.9 * likeness * Known(column, names.Variable), 2), name);
        var confidence = (0.68 * likeness) + (0.2 * unit.Fit) + (unit.Told ? 0.1 : 0.05);
        if (!unit.Told && column.Heading.Unit is not null)
            confidence *= UnknownBrackets;
        return new(column, names.Variable, unit, Math.Round(confidence, 2), unit.Reason.Length == 0 ? name : $"{name}; {unit.Reason}");
    }

    /// <summary>A category whose words the file does not use is half as likely: another column of that name, or words to be declared by hand.</summary>
    private static double Known(ColumnProfile column, Variable variable) =>
        variable.Words.Count == 0 || column.Texts.Count == 0
            ? 1
            : 0.5 + (0.5 * column.Texts.Keys.Count(text => variable.Words.Contains(text, StringComparer.OrdinalIgnoreCase)) / column.Texts.Count);
}
