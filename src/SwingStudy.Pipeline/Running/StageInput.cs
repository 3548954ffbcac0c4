using SwingStudy.Domain.Tables;
using SwingStudy.Storage.Registry;

namespace SwingStudy.Pipeline.Running;

/// <summary>What one unit of work may see: what its stage declares and nothing else.</summary>
internal sealed class StageInput
{
    private readonly StageDeclaration _declaration;
    private readonly IReadOnlyDictionary<string, RowSet> _rows;
    private readonly IReadOnlyDictionary<string, TableDefinition> _outputs;
    private readonly WorkUnit _unit;
    private readonly IReadOnlyList<Decision> _decisions;

    public StageInput(
        StageDeclaration declaration,
        WorkUnit unit,
        IReadOnlyDictionary<string, RowSet> rows,
        IReadOnlyDictionary<string, TableDefinition> outputs,
        IReadOnlyList<Decision> decisions)
    {
        (_declaration, _unit, _rows, _outputs, _decisions) = (declaration, unit, rows, outputs, decisions);
    }

    /// <summary>What was looked at so far: table names, <c>session</c>, kinds of decisions, and output tables after an arrow.</summary>
    public ISet<string> Used { get; } = new SortedSet<string>(StringComparer.Ordinal);

    /// <summary>The player; null for the study.</summary>
    public string? Participant => _unit.Participant;

    /// <summary>The session; null for players, the study and what lies outside sessions.</summary>
    /// <exception cref="InvalidOperationException">The stage does not declare it.</exception>
    public SessionRecord? Session
    {
        get
        {
            Require(_declaration.SeesSession, "session");
            return _unit.Session;
        }
    }

    /// <summary>The sessions of a day with the times that belong to them; none for other units.</summary>
    /// <exception cref="InvalidOperationException">The stage does not declare it.</exception>
    public IReadOnlyList<WorkUnit> Sessions
    {
        get
        {
            Require(_declaration.SeesSession, "session");
            return _unit.Sessions;
        }
    }

    /// <summary>Rows of an input table that concern this unit, in the order of files and rows.</summary>
    /// <exception cref="InvalidOperationException">The stage does not declare the table.</exception>
    public RowSet Rows(string table)
    {
        Require(_rows.ContainsKey(table), table);
        return _rows[table];
    }

    /// <summary>Decisions of one kind that may concern this unit, oldest first.</summary>
    /// <exception cref="InvalidOperationException">The stage does not declare the kind.</exception>
    public IReadOnlyList<Decision> Decisions(string kind)
    {
        Require(_declaration.Decisions.Contains(kind), kind);
        return [.. _decisions.Where(decision => decision.Kind == kind)];
    }

    /// <summary>The definition of an output table.</summary>
    /// <exception cref="InvalidOperationException">The stage does not declare the table.</exception>
    public TableDefinition Output(string table)
    {
        Require(_outputs.ContainsKey(table), $"-> {table}");
        return _outputs[table];
    }

    private void Require(bool isDeclared, string what)
    {
        if (!isDeclared)
            throw new InvalidOperationException($"The stage '{_declaration.Name}' does not declare '{what}'.");
        Used.Add(what);
    }
}
