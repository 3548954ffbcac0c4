namespace SwingStudy.Ingestion.Readers.C3d;

/// <summary>Writes frames side by side into a buffer.</summary>
internal sealed class C3dFrameWriter(byte[] buffer, C3dStorage storage, double pointScale, double[] analogScales)
{
    private const int ZeroOfUnsigned = 32768;
    private int _at;

    /// <summary>Appends a frame.</summary>
    public void Add(C3dRecording recording, int frame)
    {
        foreach (var point in recording.Points)
            Add(point, frame);
        for (var sample = frame * recording.AnalogSamples; sample < (frame + 1) * recording.AnalogSamples; sample++)
        {
            for (var channel = 0; channel < recording.Analog.Count; channel++)
            {
                var value = recording.Analog[channel].Values[sample] / analogScales[channel];
                if (storage.IsReal)
                    Real(value);
                else
                    Integer((int)Math.Round(value) + (recording.IsAnalogUnsigned ? ZeroOfUnsigned : 0));
            }
        }
    }

    private void Add(C3dPoint point, int frame)
    {
        double x = point.X[frame], y = point.Y[frame], z = point.Z[frame];
        var isSeen = double.IsFinite(x + y + z);
        var mark = !isSeen ? -1 : point.Residuals is { } residuals && double.IsFinite(residuals[frame]) ? (int)Math.Clamp(Math.Round(residuals[frame] / pointScale), 0, 255) : 0;
        foreach (var value in (ReadOnlySpan<double>)[x, y, z])
        {
            if (storage.IsReal)
                Real(isSeen ? value : 0);
            else
                Integer(isSeen ? (int)Math.Round(value / pointScale) : 0);
        }

        if (storage.IsReal)
            Real(mark);
        else
            Integer(mark);
    }

    private void Real(double value)
    {
        C3dWords.Write(buffer.AsSpan(_at), (float)value, storage.Order);
        _at += sizeof(float);
    }

    private void Integer(int value)
    {
        C3dWords.Write(buffer.AsSpan(_at), unchecked((ushort)value), storage.Order);
        _at += sizeof(short);
    }
}
