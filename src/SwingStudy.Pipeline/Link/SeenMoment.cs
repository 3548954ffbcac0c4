using SwingStudy.Pipeline.Link.Clocks;

namespace SwingStudy.Pipeline.Link;

/// <summary>One moment of a stay and the records of it.</summary>
internal sealed class SeenMoment
{
    private readonly List<SeenRecord> _records = [];

    public SeenMoment(SeenRecord first)
    {
        (Reading, Definer) = (first.Mapped, first);
        _records.Add(first);
    }

    /// <summary>When it was, on the reference clock, as the record tells that tells it best; its player where a record names one.</summary>
    public ClockReading Reading { get; private set; }

    /// <summary>The record that tells the time best.</summary>
    public SeenRecord Definer { get; private set; }

    /// <summary>Records of it, one a device.</summary>
    public IReadOnlyList<SeenRecord> Records => _records;

    /// <summary>Adds what another device saw.</summary>
    public void Add(SeenRecord record)
    {
        _records.Add(record);
        if (record.IsBetterThan(Definer))
            Definer = record;
        Reading = Definer.Mapped with { Who = Reading.Who == ClockReading.Anybody ? record.Mapped.Who : Reading.Who };
    }
}
