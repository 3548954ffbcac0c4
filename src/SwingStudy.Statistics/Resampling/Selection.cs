using System.Runtime.CompilerServices;

namespace SwingStudy.Statistics.Resampling;

/// <summary>Brings single order statistics into place without sorting everything.</summary>
internal static class Selection
{
    /// <summary>Reorders so that <paramref name="values"/>[place] is what it would be after sorting, nothing larger lies before it and nothing smaller after.</summary>
    /// <remarks>Source: Hoare (1961), Algorithm 65: find, CACM 4:321, with the median of three as pivot. All values finite.</remarks>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static void Place(Span<double> values, int place)
    {
        int low = 0, high = values.Length - 1;
        while (low < high)
        {
            var pivot = MedianOfThree(values[low], values[(low + high) / 2], values[high]);
            int i = low, j = high;
            while (i <= j)
            {
                while (values[i] < pivot)
                    i++;
                while (values[j] > pivot)
                    j--;
                if (i <= j)
                {
                    (values[i], values[j]) = (values[j], values[i]);
                    i++;
                    j--;
                }
            }

            if (place <= j)
                high = j;
            else if (place >= i)
                low = i;
            else
                return;
        }
    }

    private static double MedianOfThree(double a, double b, double c) => Math.Max(Math.Min(a, b), Math.Min(Math.Max(a, b), c));
}
