using System.Text;
using SwingStudy.Domain.Problems;

namespace SwingStudy.Ingestion.Readers.C3d;

/// <summary>Walks the records of a parameter section. Each step goes forward, so that no pointer can lead it in a circle.</summary>
internal static class C3dParameterReader
{
    private const int FirstRecord = 4;
    private const int MostDimensions = 7;

    /// <summary>The parameters that are sound; the others are told.</summary>
    /// <param name="section">The bytes of the section, no more than its blocks.</param>
    /// <param name="order">Their order.</param>
    /// <param name="file">For messages.</param>
    /// <param name="notices">Takes what is odd.</param>
    public static C3dParameters Read(ReadOnlyMemory<byte> section, C3dByteOrder order, string file, List<Problem> notices)
    {
        var groups = new Dictionary<int, string>();
        var found = new List<(int Group, string Name, ReadOnlyMemory<byte> Body)>();
        var bytes = section.Span;
        for (var at = FirstRecord; at + 4 <= bytes.Length;)
        {
            var length = Math.Abs((int)(sbyte)bytes[at]);
            if (length == 0)
                break;
            var id = (sbyte)bytes[at + 1];
            var pointer = at + 2 + length;
            if (pointer + 2 > bytes.Length)
            {
                notices.Add(C3dMessages.RecordCut(file, at));
                break;
            }

            var name = Encoding.Latin1.GetString(bytes.Slice(at + 2, length)).Trim();
            var next = C3dWords.UInt16(bytes[pointer..], order);
            var end = next == 0 ? bytes.Length : Math.Min(pointer + next, bytes.Length);
            if (id < 0)
                groups.TryAdd(-id, name);
            else if (id > 0)
                found.Add((id, name, section[Math.Min(pointer + 2, end)..end]));
            else
                notices.Add(C3dMessages.ParameterUnsound(file, name, "belongs to no group"));
            if (next == 0)
                break;
            if (pointer + next > bytes.Length)
                notices.Add(C3dMessages.RecordCut(file, at));
            at = pointer + next;
        }

        var parameters = new List<C3dParameter>();
        foreach (var (id, name, body) in found)
        {
            if (!groups.TryGetValue(id, out var group))
                group = $"#{id}";
            if (Parameter(group, name, body, order, out var fault) is { } parameter)
                parameters.Add(parameter);
            else
                notices.Add(C3dMessages.ParameterUnsound(file, $"{group}:{name}", fault));
        }

        return new C3dParameters(parameters);
    }

    private static C3dParameter? Parameter(string group, string name, ReadOnlyMemory<byte> body, C3dByteOrder order, out string fault)
    {
        fault = "is cut off";
        if (body.Length < 2)
            return null;
        var type = (sbyte)body.Span[0];
        var count = body.Span[1];
        if (type is not (-1 or 1 or 2 or 4))
        {
            fault = "has a type that nobody knows";
            return null;
        }

        if (count > MostDimensions)
        {
            fault = "has more than seven dimensions";
            return null;
        }

        if (body.Length < 2 + count)
            return null;
        long size = Math.Abs((int)type);
        var dimensions = new int[count];
        for (var i = 0; i < count; i++)
        {
            dimensions[i] = body.Span[2 + i];
            size = Math.Min(size * dimensions[i], int.MaxValue);
        }

        if (2 + count + size > body.Length)
        {
            fault = "claims more bytes than its record has";
            return null;
        }

        return new C3dParameter(group, name, (C3dParameterType)type, dimensions, body.Slice(2 + count, (int)size), order);
    }
}
