namespace SwingStudy.Ingestion.Readers.C3d;

/// <summary>An analog channel to be written.</summary>
/// <param name="Label">Its label.</param>
/// <param name="Unit">Its unit, such as V or N.</param>
/// <param name="Values">Samples in order: <see cref="C3dRecording.AnalogSamples"/> a frame; all finite.</param>
public sealed record C3dAnalog(string Label, string Unit, double[] Values);
