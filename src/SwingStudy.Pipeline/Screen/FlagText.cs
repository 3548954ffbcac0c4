using System.Globalization;

namespace SwingStudy.Pipeline.Screen;

/// <summary>Numbers in the words of flags: canonical unit, six digits, invariant.</summary>
internal static class FlagText
{
    /// <summary>"38.4 m/s".</summary>
    public static string Value(double value, string? unit) => unit is null or "1" ? Number(value) : $"{Number(value)} {unit}";

    /// <summary>"38.4".</summary>
    public static string Number(double value) => value.ToString("G6", CultureInfo.InvariantCulture);
}
