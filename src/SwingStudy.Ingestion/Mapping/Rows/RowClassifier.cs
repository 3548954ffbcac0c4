using System.Text.RegularExpressions;
using SwingStudy.Domain.Declarations;
using SwingStudy.Domain.Sources;
using SwingStudy.Ingestion.Mapping.Cells;
using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Mapping.Rows;

/// <summary>Recognises kinds of rows by rules: the first rule whose conditions all hold names the row.</summary>
internal sealed class RowClassifier
{
    private readonly CompiledRule[] _rules;
    private readonly MissingTokens _missing;

    /// <summary>Compiles the rules.</summary>
    /// <param name="rules">The rules, in order.</param>
    /// <param name="positionOf">Position of a heading; headings are checked before.</param>
    /// <param name="missing">What stands for nothing read.</param>
    public RowClassifier(IReadOnlyList<RowRule> rules, Func<string, int> positionOf, MissingTokens missing)
    {
        _missing = missing;
        _rules = [.. rules.Select(rule => new CompiledRule(rule.Label, [.. rule.Conditions.Select(condition => Compile(condition, positionOf))]))];
    }

    /// <summary>Whether there is any rule.</summary>
    public bool IsEmpty => _rules.Length == 0;

    /// <summary>Label of the first rule that holds for a row of a block; null: none.</summary>
    public string? Label(RawBlock block, int row)
    {
        foreach (var rule in _rules)
        {
            var holds = true;
            foreach (var condition in rule.Conditions)
            {
                var cell = condition.Position >= 0 ? CellText.Trim(block.Cell(row, condition.Position)) : FirstFilled(block, row);
                if (!Holds(condition, cell))
                {
                    holds = false;
                    break;
                }
            }

            if (holds)
                return rule.Label;
        }

        return null;
    }

    /// <summary>The same for a record that could not be divided into the document's columns: cells that it lacks are empty.</summary>
    public string? Label(IReadOnlyList<string> cells)
    {
        foreach (var rule in _rules)
        {
            if (cells.Count > 0 && rule.Conditions.All(condition => Holds(condition, CellOf(cells, condition.Position))))
                return rule.Label;
        }

        return null;
    }

    private static ReadOnlySpan<char> CellOf(IReadOnlyList<string> cells, int position) => CellText.Trim(
        position < 0 ? cells.FirstOrDefault(cell => !CellText.Trim(cell).IsEmpty) ?? "" : position < cells.Count ? cells[position] : "");

    private static ReadOnlySpan<char> FirstFilled(RawBlock block, int row)
    {
        for (var column = 0; column < block.ColumnCount; column++)
        {
            var cell = CellText.Trim(block.Cell(row, column));
            if (!cell.IsEmpty)
                return cell;
        }

        return [];
    }

    private bool Holds(CompiledCondition condition, ReadOnlySpan<char> cell) =>
        (condition.Missing is not { } missing || _missing.Hold(cell) == missing)
        && (condition.Is is null || IsOne(condition.Is, cell))
        && (condition.Matches is null || condition.Matches.IsMatch(cell));

    private static bool IsOne(string[] texts, ReadOnlySpan<char> cell)
    {
        foreach (var text in texts)
        {
            if (cell.Equals(text, StringComparison.OrdinalIgnoreCase))
                return true;
        }

        return false;
    }

    private static CompiledCondition Compile(CellCondition condition, Func<string, int> positionOf) => new(
        condition.Column is null ? -1 : positionOf(condition.Column),
        condition.Is?.Select(text => text.Trim()).ToArray(),
        condition.Matches is null ? null : Patterns.Compile(condition.Matches),
        condition.Missing);

    private sealed record CompiledRule(string Label, CompiledCondition[] Conditions);

    private sealed record CompiledCondition(int Position, string[]? Is, Regex? Matches, bool? Missing);
}
