namespace SwingStudy.Ingestion.Readers.C3d;

/// <summary>Some frames of a C3D file. The arrays belong to the reader and change with its next step.</summary>
/// <param name="First">Position of the first of them in the file, from 0.</param>
/// <param name="Count">How many.</param>
/// <param name="Points">
/// x, y, z and residual of each point, point after point, frame after frame, in the file's unit. A point that was not seen has NaN in all four; a residual
/// of 0 is a point that was computed, NaN one of unknown residual.
/// </param>
/// <param name="Analog">Analog values in their quantity: sample 1 of every channel, sample 2 of every channel and so on, frame after frame.</param>
public readonly record struct C3dFrames(long First, int Count, ReadOnlyMemory<double> Points, ReadOnlyMemory<double> Analog);
