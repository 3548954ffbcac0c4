using SwingStudy.Domain.Tables;

namespace SwingStudy.Pipeline.Screen;

/// <summary>What rules see of one player's swings, in order of time: everything but the phase, so that screening cannot favour one. Practice
/// swings are left out.</summary>
internal sealed class ScreenedSwings
{
    private readonly RowSet _rows;

    private readonly IReadOnlyDictionary<(string Swing, string Variable), double> _computed;

    private ScreenedSwings(RowSet rows, IReadOnlyList<ScreenedVariable> variables, IReadOnlyDictionary<(string Swing, string Variable), double> computed)
    {
        (_rows, _computed) = (rows, computed);
        Variables = variables;
        Ids = rows.Texts("swing_id")!;
        Sessions = rows.Texts("session")!;
        Clubs = rows.Texts("club");
    }

    /// <summary>Number of swings.</summary>
    public int Count => Ids.Count;

    /// <summary>Identifiers.</summary>
    public IReadOnlyList<string> Ids { get; }

    /// <summary>Session of each.</summary>
    public IReadOnlyList<string> Sessions { get; }

    /// <summary>Club of each; null where nobody said.</summary>
    public IReadOnlyList<string?> Clubs { get; }

    /// <summary>The variables of the dictionary.</summary>
    public IReadOnlyList<ScreenedVariable> Variables { get; }

    /// <summary>Values of a variable, canonical unit, NaN where missing.</summary>
    public ReadOnlySpan<double> Values(string variable) => _rows.Numbers(variable);

    /// <summary>Values of a variable as computed from curves, whatever a device delivered; NaN where none was.</summary>
    public double[] Computed(string variable) => [.. Ids.Select(id => _computed.GetValueOrDefault((id, variable), double.NaN))];

    /// <summary>The variables that a rule looks at: those named, or all.</summary>
    public IEnumerable<ScreenedVariable> Chosen(RuleSetting rule) =>
        rule.Variables.Count == 0 ? Variables : Variables.Where(variable => rule.Variables.Contains(variable.Name));

    /// <summary>Positions of the swings of each session and club that have a value, in order of time.</summary>
    public IEnumerable<IReadOnlyList<int>> BySessionAndClub(string variable)
    {
        var values = _rows.Numbers(variable);
        return Enumerable.Range(0, Count).Where(i => !double.IsNaN(values[i])).GroupBy(i => (Sessions[i], Clubs[i])).Select(group => group.ToList());
    }

    /// <summary>Takes the rows of <c>measures</c>, in order of time, and those of <c>curve_measures</c>.</summary>
    public static ScreenedSwings Of(RowSet measures, RowSet computed, IReadOnlyList<ScreenedVariable> variables)
    {
        var practice = measures.Booleans("is_practice");
        var blind = measures.Table with { Columns = [.. measures.Table.Columns.Where(column => column.Name != "phase")] };
        var rows = new RowSet(blind, [.. blind.Columns.Select(column => measures[column.Name])]);
        int[] struck = [.. Enumerable.Range(0, measures.Count).Where(i => practice[i] != true)];
        var (swings, names, values) = (computed.Texts("swing_id"), computed.Texts("variable"), computed.Numbers("value"));
        return new ScreenedSwings(rows.Select(struck), variables, Enumerable.Range(0, computed.Count).ToDictionary(i => (swings[i]!, names[i]!), i => values[i]));
    }
}
