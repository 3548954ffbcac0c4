using SwingStudy.Domain.Problems;

namespace SwingStudy.Ingestion.Readers.C3d;

/// <summary>From a stored analog value to its quantity: (stored - <paramref name="Offset"/>) x <paramref name="Scale"/>.</summary>
/// <param name="Offset">Stored value of zero.</param>
/// <param name="Scale">Channel scale times general scale.</param>
/// <param name="IsUnsigned">Whether 16-bit integers are unsigned.</param>
internal readonly record struct C3dAnalogScale(double Offset, double Scale, bool IsUnsigned)
{
    /// <summary>The scale of each channel; a missing offset is 0, a missing scale 1.</summary>
    public static C3dAnalogScale[] Of(C3dParameters parameters, int channels, string file, List<Problem> notices)
    {
        var isUnsigned = parameters.Find("ANALOG", "FORMAT")?.Texts() is [{ } format, ..] && format.Trim().Equals("UNSIGNED", StringComparison.OrdinalIgnoreCase);
        var general = Finite(parameters.Number("ANALOG", "GEN_SCALE") ?? 1, 1);
        var scales = parameters.Joined("ANALOG", "SCALE", isUnsigned: false);
        var offsets = parameters.Joined("ANALOG", "OFFSET", isUnsigned);
        var found = new C3dAnalogScale[channels];
        for (var i = 0; i < channels; i++)
        {
            var offset = Finite(i < offsets.Count ? offsets[i] : 0, 0);
            if (!isUnsigned && offset == short.MinValue)
                notices.Add(C3dMessages.SignMistaken(file, i + 1));
            found[i] = new C3dAnalogScale(offset, Finite(i < scales.Count ? scales[i] : 1, 1) * general, isUnsigned);
        }

        return found;
    }

    private static double Finite(double value, double fallback) => double.IsFinite(value) ? value : fallback;
}
