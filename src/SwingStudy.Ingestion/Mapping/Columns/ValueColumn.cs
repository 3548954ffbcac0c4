using SwingStudy.Domain.Variables;
using SwingStudy.Ingestion.Mapping.Cells;

namespace SwingStudy.Ingestion.Mapping.Columns;

/// <summary>How the cells of one column become values of one variable, decided once a file.</summary>
internal abstract class ValueColumn
{
    private protected ValueColumn(Variable variable, ColumnPlace place, MissingTokens missing)
    {
        Variable = variable;
        Place = place;
        Missing = missing;
    }

    /// <summary>The variable of the dictionary.</summary>
    public Variable Variable { get; }

    /// <summary>Where its texts stand.</summary>
    public ColumnPlace Place { get; }

    /// <summary>What a good cell would have held, for the rejects.</summary>
    public abstract string Expected { get; }

    /// <summary>What stands for nothing read.</summary>
    protected MissingTokens Missing { get; }
}
