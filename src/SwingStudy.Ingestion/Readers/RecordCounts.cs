namespace SwingStudy.Ingestion.Readers;

/// <summary>What became of the records of a document so far; complete once its blocks are read to the end. A quoted line break belongs to its record.</summary>
public sealed record RecordCounts
{
    /// <summary>Lines above the headings.</summary>
    public long Preamble { get; internal set; }

    /// <summary>Heading rows.</summary>
    public long Headings { get; internal set; }

    /// <summary>Units rows below the headings: 0 or 1.</summary>
    public long Units { get; internal set; }

    /// <summary>Rows handed out.</summary>
    public long Rows { get; internal set; }

    /// <summary>Records without text.</summary>
    public long Blank { get; internal set; }

    /// <summary>Headings and units that stand again among the rows.</summary>
    public long Repeated { get; internal set; }

    /// <summary>Records that could not be divided into cells.</summary>
    public long Rejected { get; internal set; }

    /// <summary>All records.</summary>
    public long Records => Preamble + Headings + Units + Rows + Blank + Repeated + Rejected;

    /// <summary>Physical lines of text; equal to <see cref="Records"/> unless quoted cells hold line breaks.</summary>
    public long Lines { get; internal set; }

    internal void Add(RawBlock block)
    {
        Rows += block.RowCount;
        Rejected += block.Rejected.Count;
        foreach (var skipped in block.SkippedList)
        {
            if (skipped.Reason == SkipReason.Blank)
                Blank++;
            else
                Repeated++;
        }
    }
}
