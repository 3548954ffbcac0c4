using System.Buffers;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace SwingStudy.Domain.Buffers;

/// <summary>Pooled memory for numbers and small structures, to be given back by hand; what is not given back is merely collected.</summary>
/// <remarks>
/// It comes from the pool of bytes whatever the type. A pool of arrays of another type is compiled anew at each start of the program, since its parts that
/// are kept for each thread cannot be compiled ahead.
/// </remarks>
/// <typeparam name="T">Type of the values.</typeparam>
public struct Rented<T>
    where T : unmanaged
{
    private byte[]? _bytes;

    /// <summary>Rents room for at least as many values, which are whatever was there before.</summary>
    public Rented(int length) => _bytes = ArrayPool<byte>.Shared.Rent(checked(length * Unsafe.SizeOf<T>()));

    /// <summary>All values that there is room for; empty once given back.</summary>
    public readonly Span<T> Span => MemoryMarshal.Cast<byte, T>(_bytes.AsSpan());

    /// <summary>Makes room for twice as many values and keeps those at hand.</summary>
    public void Grow()
    {
        var larger = new Rented<T>(Math.Max(256, 2 * Span.Length));
        Span.CopyTo(larger.Span);
        Return();
        this = larger;
    }

    /// <summary>Gives the memory back; nobody may touch it afterwards.</summary>
    public void Return()
    {
        if (_bytes is not null)
            ArrayPool<byte>.Shared.Return(_bytes);
        _bytes = null;
    }
}
