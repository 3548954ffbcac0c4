namespace SwingStudy.Motion.Signals;

/// <summary>One section of a recursive filter: y = B0 x + B1 x₋₁ + B2 x₋₂ − A1 y₋₁ − A2 y₋₂.</summary>
/// <param name="B0">Weight of the sample.</param>
/// <param name="B1">Weight of the sample before.</param>
/// <param name="B2">Weight of the sample two before; zero in a section of first order.</param>
/// <param name="A1">Weight of the output before.</param>
/// <param name="A2">Weight of the output two before; zero in a section of first order.</param>
public readonly record struct SecondOrderSection(double B0, double B1, double B2, double A1, double A2)
{
    /// <summary>Output over input for a constant.</summary>
    public double ConstantGain => (B0 + B1 + B2) / (1 + A1 + A2);

    /// <summary>State (transposed direct form II) after an endless input of ones: the start that avoids a jump.</summary>
    public (double First, double Second) SteadyState
    {
        get
        {
            var second = B2 - (A2 * ConstantGain);
            return (B1 - (A1 * ConstantGain) + second, second);
        }
    }
}
