using System.Text.RegularExpressions;

namespace SwingStudy.Domain.Sources;

/// <summary>Which axis of a device, with which sign, each axis of the laboratory is.</summary>
public sealed partial record AxisMap
{
    private const string Letters = "xyz";

    private AxisMap(string x, string y, string z) => (X, Y, Z) = (x, y, z);

    /// <summary>Axes of the device that agree with the laboratory's.</summary>
    public static AxisMap Same { get; } = new("x", "y", "z");

    /// <summary>The device's axis toward the target: a letter, with a minus when it points away.</summary>
    public string X { get; }

    /// <summary>The device's axis upward.</summary>
    public string Y { get; }

    /// <summary>The device's axis to the right, facing the target.</summary>
    public string Z { get; }

    /// <summary>1 when the device's axes are right-handed, -1 when they are left-handed: moments then change their sign once more.</summary>
    public int Handedness
    {
        get
        {
            var (x, y, z) = (SourceOf(0), SourceOf(1), SourceOf(2));
            var isEven = (x, y, z) is (0, 1, 2) or (1, 2, 0) or (2, 0, 1);
            return SignOf(0) * SignOf(1) * SignOf(2) * (isEven ? 1 : -1);
        }
    }

    /// <summary>The map; null when the three are not x, y and z, each once, with or without a minus.</summary>
    public static AxisMap? Of(string x, string y, string z) =>
        Form().IsMatch(x) && Form().IsMatch(y) && Form().IsMatch(z) && new[] { x[^1], y[^1], z[^1] }.Distinct().Count() == 3 ? new(x, y, z) : null;

    /// <summary>Position (0 to 2) of the device's axis that gives a laboratory axis (0 to 2).</summary>
    public int SourceOf(int axis) => Letters.IndexOf(Text(axis)[^1], StringComparison.Ordinal);

    /// <summary>Its sign.</summary>
    public int SignOf(int axis) => Text(axis)[0] == '-' ? -1 : 1;

    private string Text(int axis) => axis switch
    {
        0 => X,
        1 => Y,
        2 => Z,
        _ => throw new ArgumentOutOfRangeException(nameof(axis), axis, "Axes are 0, 1 and 2."),
    };

    [GeneratedRegex("^-?[xyz]$", RegexOptions.CultureInvariant)]
    private static partial Regex Form();
}
