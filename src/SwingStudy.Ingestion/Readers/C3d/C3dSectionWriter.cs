using System.Text;

namespace SwingStudy.Ingestion.Readers.C3d;

/// <summary>Builds a parameter section.</summary>
internal sealed class C3dSectionWriter(C3dByteOrder order)
{
    private const int BlockBytes = 512;
    private const int MostBlocks = 255;
    private const int LongestDimension = 255;
    private const int MostGroups = 127;
    private readonly List<byte[]> _records = [];
    private readonly Dictionary<string, int> _groups = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>Texts of any number: what passes 255 goes on in NAME2, NAME3 and so on.</summary>
    /// <exception cref="ArgumentException">A text is longer than 255 bytes.</exception>
    public void Texts(string group, string name, IReadOnlyList<string> texts)
    {
        for (var (from, part) = (0, 1); from < texts.Count || part == 1; from += LongestDimension, part++)
        {
            var bytes = texts.Skip(from).Take(LongestDimension).Select(Encoding.UTF8.GetBytes).ToArray();
            var width = bytes.Length == 0 ? 0 : Math.Max(1, bytes.Max(text => text.Length));
            if (width > LongestDimension)
                throw new ArgumentException($"A text of {group}:{name} has {width} bytes; C3D holds {LongestDimension}.", nameof(texts));
            var data = new byte[width * bytes.Length];
            Array.Fill(data, (byte)' ');
            for (var i = 0; i < bytes.Length; i++)
                bytes[i].CopyTo(data, i * width);
            Add(group, part == 1 ? name : $"{name}{part}", C3dParameterType.Text, [width, bytes.Length], data);
        }
    }

    /// <summary>Reals, a scalar or an array; the last dimension goes on in NAME2 past 255.</summary>
    public void Reals(string group, string name, IReadOnlyList<double> values, params int[] dimensions) =>
        Numbers(group, name, C3dParameterType.Real, values, dimensions, (bytes, value) => C3dWords.Write(bytes, (float)value, order));

    /// <summary>16-bit integers; those from 32768 to 65535 are to be read unsigned.</summary>
    public void Integers(string group, string name, IReadOnlyList<double> values, params int[] dimensions) =>
        Numbers(group, name, C3dParameterType.Integer, values, dimensions, (bytes, value) => C3dWords.Write(bytes, unchecked((ushort)(int)value), order));

    /// <summary>The section, padded to whole blocks.</summary>
    /// <exception cref="ArgumentException">It is longer than a section may be.</exception>
    public byte[] Build()
    {
        var length = 4 + _records.Sum(record => record.Length) + 1;
        var blocks = (length + BlockBytes - 1) / BlockBytes;
        if (blocks > MostBlocks)
            throw new ArgumentException($"The parameters need {blocks} blocks; C3D has {MostBlocks}.");
        var section = new byte[blocks * BlockBytes];
        (section[0], section[1], section[2], section[3]) = (1, 0x50, (byte)blocks, (byte)order);
        var at = 4;
        foreach (var record in _records)
        {
            record.CopyTo(section, at);
            at += record.Length;
        }

        return section;
    }

    private void Numbers(string group, string name, C3dParameterType type, IReadOnlyList<double> values, int[] dimensions, WriteOne write)
    {
        var inner = dimensions.Length == 0 ? 1 : dimensions[..^1].Aggregate(1, (product, dimension) => product * dimension);
        var most = inner * LongestDimension;
        for (var (from, part) = (0, 1); from < values.Count || part == 1; from += most, part++)
        {
            var count = Math.Min(most, values.Count - from);
            var data = new byte[count * (int)type];
            for (var i = 0; i < count; i++)
                write(data.AsSpan(i * (int)type), values[from + i]);
            Add(group, part == 1 ? name : $"{name}{part}", type, dimensions.Length == 0 ? [] : [.. dimensions[..^1], count / Math.Max(1, inner)], data);
        }
    }

    private void Add(string group, string name, C3dParameterType type, int[] dimensions, byte[] data)
    {
        if (!_groups.TryGetValue(group, out var id))
        {
            _groups[group] = id = _groups.Count + 1;
            if (id > MostGroups)
                throw new ArgumentException($"C3D has at most {MostGroups} groups.");
            Record(group, -id, []);
        }

        Record(name, id, [unchecked((byte)(sbyte)type), (byte)dimensions.Length, .. dimensions.Select(dimension => (byte)dimension), .. data]);
    }

    private void Record(string name, int id, byte[] body)
    {
        var text = Encoding.ASCII.GetBytes(name.ToUpperInvariant());
        var record = new byte[2 + text.Length + 2 + body.Length + 1];
        (record[0], record[1]) = ((byte)text.Length, unchecked((byte)(sbyte)id));
        text.CopyTo(record, 2);
        C3dWords.Write(record.AsSpan(2 + text.Length), checked((ushort)(2 + body.Length + 1)), order);
        body.CopyTo(record, 4 + text.Length);
        _records.Add(record);
    }

    private delegate void WriteOne(Span<byte> bytes, double value);
}
