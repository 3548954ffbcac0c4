using System.Runtime.Intrinsics;

namespace SwingStudy.Ingestion.Mapping.Cells;

/// <summary>From the number in the file to the canonical unit: value · <paramref name="Factor"/> + <paramref name="Offset"/>.</summary>
internal readonly record struct LinearScale(double Factor, double Offset)
{
    /// <summary>Leaves numbers as they are.</summary>
    public static LinearScale Same { get; } = new(1, 0);

    /// <summary>Scale, then offset, then sign, then the conversion of units: one multiplication and one addition for all of them.</summary>
    public static LinearScale Of(double scale, double offset, bool negate, double unitFactor, double unitOffset)
    {
        var sign = negate ? -1.0 : 1.0;
        return new(sign * scale * unitFactor, (sign * offset * unitFactor) + unitOffset);
    }

    /// <summary>The value in the canonical unit. Adding the offset also turns a negative zero into zero.</summary>
    public double Apply(double value) => (value * Factor) + Offset;

    /// <summary>Four values in the canonical unit.</summary>
    public Vector256<double> Apply(Vector256<double> values) => (values * Factor) + Vector256.Create(Offset);
}
