namespace SwingStudy.Ingestion.Mapping.Times;

/// <summary>Rows that tell the hour only, under a day that the file names once: past midnight they belong to the next day.</summary>
internal static class MidnightCrossing
{
    private const long MillisPerDay = 86_400_000;

    /// <summary>Adds a day to each row from the one on whose clock falls by more than half a day. Returns the positions of those first rows.</summary>
    /// <param name="localMillis">Local times in file order, all of one day.</param>
    public static IReadOnlyList<int> Carry(Span<long> localMillis)
    {
        List<int> crossings = [];
        long carried = 0;
        for (var i = 0; i < localMillis.Length; i++)
        {
            localMillis[i] += carried;
            if (i > 0 && localMillis[i - 1] - localMillis[i] > MillisPerDay / 2)
            {
                crossings.Add(i);
                carried += MillisPerDay;
                localMillis[i] += MillisPerDay;
            }
        }

        return crossings;
    }
}
