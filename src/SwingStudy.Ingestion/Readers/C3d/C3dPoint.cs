namespace SwingStudy.Ingestion.Readers.C3d;

/// <summary>A point to be written: one value a frame, in the unit of the recording.</summary>
/// <param name="Label">Its label.</param>
/// <param name="X">First coordinate; NaN in a frame in which the point was not seen.</param>
/// <param name="Y">Second coordinate.</param>
/// <param name="Z">Third coordinate.</param>
public sealed record C3dPoint(string Label, double[] X, double[] Y, double[] Z)
{
    /// <summary>Residual of each frame in the same unit, kept to 1/255 of what the scale allows; null: 0, which says computed.</summary>
    public double[]? Residuals { get; init; }
}
