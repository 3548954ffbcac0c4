using System.Globalization;
using SwingStudy.Statistics.Chance;

namespace SwingStudy.Statistics.Resampling;

/// <summary>Cuts resampling into blocks of fixed size, each with its own stream, so that the number of threads never changes a result.</summary>
internal static class ResampleBlocks
{
    /// <summary>Resamples in one block.</summary>
    public const int Size = 1024;

    /// <summary>Runs <paramref name="work"/> once a block.</summary>
    /// <param name="total">Number of resamples.</param>
    /// <param name="threads">Largest number of blocks at work at once.</param>
    /// <param name="chance">The stream that the blocks' streams are split from; it is not drawn from.</param>
    /// <param name="work">Gets the first resample, the resample after the last, and the stream of the block.</param>
    public static void Run(int total, int threads, Xoshiro256 chance, Action<int, int, Xoshiro256> work)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(total);
        ArgumentOutOfRangeException.ThrowIfLessThan(threads, 1);
        var blocks = (total + Size - 1) / Size;
        if (threads == 1 || blocks < 2)
        {
            for (var block = 0; block < blocks; block++)
                One(block);
        }
        else
        {
            Parallel.For(0, blocks, new ParallelOptions { MaxDegreeOfParallelism = threads }, One);
        }

        void One(int block)
        {
            var start = block * Size;
            work(start, Math.Min(total, start + Size), chance.Split("block/" + block.ToString(CultureInfo.InvariantCulture)));
        }
    }
}
