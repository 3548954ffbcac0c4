namespace SwingStudy.Domain.Sources;

/// <summary>What happens to a row with a cell that cannot be read or is physically impossible.</summary>
public enum BadCellPolicy
{
    /// <summary>The row is taken without the cell; the cell's raw text goes to the rejects.</summary>
    RejectCell,

    /// <summary>The whole row goes to the rejects, for its first bad cell (time first, then file order).</summary>
    RejectRow,
}
