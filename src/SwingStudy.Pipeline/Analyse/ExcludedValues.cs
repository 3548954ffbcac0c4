using SwingStudy.Domain.Tables;
using SwingStudy.Pipeline.Screen;

namespace SwingStudy.Pipeline.Analyse;

/// <summary>The values that do not count though their swing does: by the newest decision about the value, without one by any rule.</summary>
internal sealed class ExcludedValues
{
    /// <summary>Columns of <c>flags</c> that are needed.</summary>
    public static IReadOnlyList<string> Columns { get; } = ["swing_id", "variable", "rule", "action"];

    private readonly HashSet<(string Swing, string Variable)> _excluded = [];

    public ExcludedValues(RowSet flags)
    {
        var (swings, variables, rules, actions) = (flags.Texts("swing_id"), flags.Texts("variable"), flags.Texts("rule"), flags.Texts("action"));
        var decided = new HashSet<(string, string)>();
        for (var i = flags.Count - 1; i >= 0; i--)
        {
            if (swings[i] is not { } swing || variables[i] is not { } variable || decided.Contains((swing, variable)))
                continue;
            var isDecision = rules[i] == Flag.Decided;
            if (isDecision)
            {
                decided.Add((swing, variable));
                _excluded.Remove((swing, variable));
            }

            if (actions[i] == Flag.ExcludeValue)
                _excluded.Add((swing, variable));
        }
    }

    /// <summary>Whether the value of a swing does not count.</summary>
    public bool Contains(string swing, string variable) => _excluded.Contains((swing, variable));
}
