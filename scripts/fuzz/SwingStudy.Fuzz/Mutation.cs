using System.Buffers.Binary;
using SwingStudy.Statistics.Chance;

namespace SwingStudy.Fuzz;

/// <summary>Changes valid files: single bytes and words, stretches left out, doubled, put in from another file, cut ends.</summary>
internal sealed class Mutation(Xoshiro256 chance)
{
    private const int Longest = 16_384;
    private static readonly int[] Words = [0, 1, 2, 3, 84, 127, 128, 255, 256, 511, 512, 513, 32767, 32768, 65534, 65535];
    private static readonly byte[] Signs = "\"';,.\t\r\n{}[]:#-+eE0123456789 NaNxyz"u8.ToArray();

    /// <summary>A changed copy of a file.</summary>
    public byte[] Of(byte[] file, byte[] other)
    {
        var bytes = file;
        for (var edits = 1 + chance.NextIndex(6); edits > 0; edits--)
            bytes = Edit(bytes, other);
        return bytes.Length > Longest ? bytes[..Longest] : bytes;
    }

    private byte[] Edit(byte[] bytes, byte[] other)
    {
        if (bytes.Length == 0)
            return other;
        var at = chance.NextIndex(bytes.Length);
        var length = Math.Min(bytes.Length - at, 1 + chance.NextIndex(chance.NextIndex(8) == 0 ? 512 : 8));
        switch (chance.NextIndex(9))
        {
            case 0:
                return [.. bytes.AsSpan(0, at), .. bytes.AsSpan(at + length)];
            case 1:
                return [.. bytes.AsSpan(0, at + length), .. bytes.AsSpan(at)];
            case 2:
                var from = chance.NextIndex(other.Length);
                return [.. bytes.AsSpan(0, at), .. other.AsSpan(from, Math.Min(length, other.Length - from)), .. bytes.AsSpan(at)];
            case 3:
                return bytes[..at];
            case 4:
                return [.. bytes.AsSpan(0, at), Signs[chance.NextIndex(Signs.Length)], .. bytes.AsSpan(at)];
        }

        var changed = (byte[])bytes.Clone();
        switch (chance.NextIndex(4))
        {
            case 0:
                changed[at] ^= (byte)(1 << chance.NextIndex(8));
                break;
            case 1:
                changed[at] = (byte)chance.NextIndex(256);
                break;
            case 2:
                changed[at] = Signs[chance.NextIndex(Signs.Length)];
                break;
            default:
                if (at + 2 <= changed.Length)
                    BinaryPrimitives.WriteUInt16LittleEndian(changed.AsSpan(at), (ushort)Words[chance.NextIndex(Words.Length)]);
                break;
        }

        return changed;
    }
}
