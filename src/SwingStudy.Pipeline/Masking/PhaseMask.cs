using System.Text.RegularExpressions;
using SwingStudy.Domain.Protocols;
using SwingStudy.Domain.Tables;
using SwingStudy.Storage.Registry;

namespace SwingStudy.Pipeline.Masking;

/// <summary>Shows a blind analyst codes in place of phases, contrasts and cues, and hides what tells the direction of a contrast.</summary>
/// <remarks>
/// A rule of what the program shows, not a lock: the tables on disk hold the phases, and days tell the order of sessions to whoever knows the design.
/// </remarks>
public sealed class PhaseMask
{
    private readonly Dictionary<(string Kind, string Name), string> _codes;
    private readonly Regex? _names;

    /// <summary>A mask with these codes.</summary>
    public PhaseMask(IReadOnlyList<MaskedName> names)
    {
        _codes = names.ToDictionary(name => (name.Kind, name.Name), name => name.Code);
        Names = names;
        var words = names.Select(name => Regex.Escape(name.Name)).Distinct(StringComparer.Ordinal).OrderByDescending(word => word.Length).ToList();
        _names = words.Count > 0 ? new Regex($"(?<![A-Za-z0-9_-])({string.Join('|', words)})(?![A-Za-z0-9_-])", RegexOptions.CultureInvariant) : null;
    }

    /// <summary>The names that are hidden, with their codes.</summary>
    public IReadOnlyList<MaskedName> Names { get; }

    /// <summary>The mask that holds: the protocol says so, it is locked, and nobody has unblinded; null otherwise.</summary>
    public static PhaseMask? Of(Protocol protocol, ProtocolRecords records) =>
        protocol.Blinding is { AnalystIsMasked: true } && records.History().IsLocked && records.Unblinding() is null ? new PhaseMask(records.MaskedNames()) : null;

    /// <summary>The code of a name; null for one that has none, which is not shown either.</summary>
    /// <param name="kind">A kind of <see cref="MaskedName"/>.</param>
    /// <param name="name">The name.</param>
    public string? Code(string kind, string? name) => name is null ? null : _codes.GetValueOrDefault((kind, name));

    /// <summary>A text with the codes in place of the names.</summary>
    public string Text(string text) => _names is null ? text : _names.Replace(text, match => Names.First(name => name.Name == match.Value).Code);

    /// <summary>The rows as a blind analyst sees them.</summary>
    public RowSet Apply(RowSet rows)
    {
        var columns = new Column[rows.Columns.Count];
        for (var i = 0; i < columns.Length; i++)
            columns[i] = Masked(rows, rows.Table.Columns[i].Name, rows.Columns[i]);
        return new RowSet(rows.Table, columns);
    }

    /// <summary>Whether a cell, and the cells it was made from, can be shown without telling a phase or the direction of a contrast.</summary>
    /// <param name="table">The table.</param>
    /// <param name="column">The column; null for the row.</param>
    public static bool CanShowOrigin(TableDefinition table, string? column) =>
        table.Columns.All(known => known.Name != "contrast") && table.Name != StudyTables.CurveMeans.Name
        && (column is null || MaskedColumns.Of(table, column) == MaskRule.Plain);

    /// <summary>SQL expressions, by column, for what a blind analyst sees otherwise than it is.</summary>
    public IReadOnlyDictionary<string, string> Sql(TableDefinition table) => MaskedSql.Of(table, Names);

    private Column Masked(RowSet rows, string name, Column column) => MaskedColumns.Of(rows.Table, name) switch
    {
        MaskRule.Plain => column,
        MaskRule.PhaseCode => Coded(column, MaskedName.Phase),
        MaskRule.ContrastCode => Coded(column, MaskedName.Contrast),
        MaskRule.CueCode => Coded(column, MaskedName.Cue),
        MaskRule.Size => Sized(rows, row => Math.Abs(rows.Numbers("estimate")[row])),
        MaskRule.LowOfSize => Sized(rows, row => rows.Numbers("estimate")[row] < 0 ? -rows.Numbers("ci_high")[row] : rows.Numbers("ci_low")[row]),
        MaskRule.HighOfSize => Sized(rows, row => rows.Numbers("estimate")[row] < 0 ? -rows.Numbers("ci_low")[row] : rows.Numbers("ci_high")[row]),
        _ => Column.Missing(column.Kind, column.Length),
    };

    private TextColumn Coded(Column column, string kind) => new([.. ((TextColumn)column).Values.Select(name => Code(kind, name))]);

    private static NumberColumn Sized(RowSet rows, Func<int, double> value)
    {
        var measures = rows.Texts("measure");
        return new([.. Enumerable.Range(0, rows.Count).Select(row => MaskedColumns.Symmetric.Contains(measures[row]) ? value(row) : double.NaN)]);
    }
}
