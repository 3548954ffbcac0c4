using SwingStudy.Domain.Tables;

namespace SwingStudy.Ingestion.Mapping.Rows;

/// <summary>What packing one column after the other needs for a moment. For one thread.</summary>
internal sealed class PackingScratch
{
    private ushort[] _places = [];

    /// <summary>Finds distinct numbers.</summary>
    public DistinctNumbers Distinct { get; } = new();

    /// <summary>Finds texts again by their object.</summary>
    public Dictionary<object, int> Known { get; } = new(ReferenceEqualityComparer.Instance);

    /// <summary>Room for the places of so many rows.</summary>
    public Span<ushort> Places(int rows)
    {
        if (_places.Length < rows)
            _places = new ushort[rows];
        return _places.AsSpan(0, rows);
    }

    /// <summary>Places below 256 as bytes.</summary>
    public static byte[] Narrow(ReadOnlySpan<ushort> places)
    {
        var narrow = GC.AllocateUninitializedArray<byte>(places.Length);
        for (var i = 0; i < places.Length; i++)
            narrow[i] = (byte)places[i];
        return narrow;
    }
}
