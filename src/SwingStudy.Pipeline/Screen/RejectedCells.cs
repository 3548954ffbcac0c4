using SwingStudy.Domain.Tables;
using SwingStudy.Pipeline.Screen.Rules;

namespace SwingStudy.Pipeline.Screen;

/// <summary>Cells that intake could not take become flags, with their raw text.</summary>
internal static class RejectedCells
{
    private const string OutOfRange = "out-of-range";

    /// <summary>One flag for each cell of a capture of this player; the value is missing already, so that nothing is left to keep.</summary>
    public static IEnumerable<Flag> Flags(RowSet rejects, RowSet links, RuleSetting impossible)
    {
        var swings = links.Texts("swing_id");
        var linkOf = links.Texts("capture_id").Select((id, i) => (id, i)).ToDictionary(pair => pair.id!, pair => pair.i, StringComparer.Ordinal);
        var (captures, extents, reasons) = (rejects.Texts("capture_id"), rejects.Texts("extent"), rejects.Texts("reason"));
        var (raws, details, columns, variables) = (rejects.Texts("raw"), rejects.Texts("detail"), rejects.Texts("column"), rejects.Texts("variable"));
        for (var i = 0; i < rejects.Count; i++)
        {
            if (extents[i] != "cell" || variables[i] is null || captures[i] is not { } capture || !linkOf.TryGetValue(capture, out var link))
                continue;
            var isImpossible = reasons[i] == OutOfRange;
            yield return new Flag(
                swings[link],
                capture,
                variables[i],
                isImpossible ? ImpossibleRule.Word : reasons[i] ?? "rejected",
                isImpossible && impossible.Action == Flag.ExcludeSwing ? Flag.ExcludeSwing : Flag.ExcludeValue,
                $"'{raws[i]}' in column '{columns[i]}'; expected {details[i]}",
                Flag.ByRule);
        }
    }
}
