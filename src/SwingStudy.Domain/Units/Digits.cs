namespace SwingStudy.Domain.Units;

/// <summary>How many decimals of a number its uncertainty leaves meaning.</summary>
public static class Digits
{
    private const int Most = 6;

    /// <summary>Decimals that show two digits of the uncertainty, and of the number as much as they allow.</summary>
    /// <remarks>
    /// Two significant digits of an uncertainty: Joint Committee for Guides in Metrology (2008), Evaluation of measurement data, JCGM 100, 7.2.6.
    /// </remarks>
    /// <param name="uncertainty">Size of the uncertainty in the unit of the number, for instance half an interval.</param>
    /// <param name="otherwise">Decimals where the uncertainty is zero or unknown.</param>
    public static int DecimalsFor(double uncertainty, int otherwise)
    {
        var size = Math.Abs(uncertainty);
        return size > 0 && double.IsFinite(size) ? Math.Clamp(1 - (int)Math.Floor(Math.Log10(size)), 0, Most) : otherwise;
    }
}
