using SwingStudy.Statistics.Chance;

namespace SwingStudy.App.Demo;

/// <summary>Draws that the demo needs beside uniform numbers.</summary>
internal static class DemoChance
{
    /// <summary>A standard normal number, by the polar form of Box and Muller (1958).</summary>
    public static double Normal(this Xoshiro256 chance)
    {
        while (true)
        {
            var x = (2 * chance.NextUnit()) - 1;
            var y = (2 * chance.NextUnit()) - 1;
            var square = (x * x) + (y * y);
            if (square is > 0 and < 1)
                return x * Math.Sqrt(-2 * Math.Log(square) / square);
        }
    }

    /// <summary>True with that probability.</summary>
    public static bool Happens(this Xoshiro256 chance, double probability) => chance.NextUnit() < probability;

    /// <summary>A uniform number between two.</summary>
    public static double Between(this Xoshiro256 chance, double low, double high) => low + ((high - low) * chance.NextUnit());
}
