namespace SwingStudy.Statistics.Group;

/// <summary>The data of a mixed model reduced to what the likelihood needs, so that one evaluation costs a pass over groups, not rows.</summary>
/// <remarks>
/// Columns are X and then y, less its centre. W = V/σ² = I + Z Λ Λ' Z' is block-diagonal over subjects.
/// Source: Pinheiro and Bates (2000), Mixed-Effects Models in S and S-PLUS, ch. 2.
/// </remarks>
internal abstract class MixedModelBlocks(int fixedEffects, int rows)
{
    /// <summary>p.</summary>
    public int FixedEffects { get; } = fixedEffects;

    /// <summary>n.</summary>
    public int Rows { get; } = rows;

    /// <summary>Width of [X y].</summary>
    protected int Width { get; } = fixedEffects + 1;

    /// <summary>Number of relative covariance parameters θ.</summary>
    public abstract int Parameters { get; }

    /// <summary>Adds [X y]' W⁻¹ [X y] to <paramref name="total"/> (row-major, lower triangle) and returns ln |W|.</summary>
    public abstract double Accumulate(ReadOnlySpan<double> theta, Span<double> total);

    /// <summary>A value near the mean of y when X holds a column of ones, which then absorbs it; else 0.</summary>
    public static (double Centre, int InterceptColumn) CentreOf(MixedModelData data)
    {
        var intercept = Array.FindIndex(data.FixedColumns, column => Array.TrueForAll(column, x => x == 1));
        if (intercept < 0)
            return (0, -1);
        var summary = Description.Summary.OfChecked(data.Values);
        return (summary.Mean!.Value, intercept);
    }
}
