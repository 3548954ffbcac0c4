namespace SwingStudy.Ingestion.Mapping;

/// <summary>The balance of one file: what was read is taken, rejected, or no data.</summary>
/// <param name="Read">Records of the file; a quoted line break belongs to its record.</param>
/// <param name="Taken">Records whose values are taken.</param>
/// <param name="Rejected">Records that could not be taken.</param>
/// <param name="NotData">Records that are no data, by what they are.</param>
public sealed record LineCounts(long Read, long Taken, long Rejected, IReadOnlyDictionary<string, long> NotData)
{
    /// <summary>Nothing read.</summary>
    public static LineCounts None { get; } = new(0, 0, 0, new Dictionary<string, long>());

    /// <summary>All records that are no data.</summary>
    public long NotDataTotal
    {
        get
        {
            var total = 0L;
            foreach (var (_, records) in NotData)
                total += records;
            return total;
        }
    }

    /// <summary>Whether each record is accounted for.</summary>
    public bool Balances => Read == Taken + Rejected + NotDataTotal;

    /// <summary>Moves taken records to what they turned out to be, such as repeats of earlier files.</summary>
    internal LineCounts Moved(long records, string label)
    {
        if (records == 0)
            return this;
        var notData = new SortedDictionary<string, long>(NotData.ToDictionary(), StringComparer.Ordinal);
        notData[label] = notData.GetValueOrDefault(label) + records;
        return this with { Taken = Taken - records, NotData = notData };
    }
}
