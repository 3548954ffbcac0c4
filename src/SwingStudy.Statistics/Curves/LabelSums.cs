using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace SwingStudy.Statistics.Curves;

/// <summary>Sums of labelled curves at every node for many labellings: the one matrix product behind all permutation t curves.</summary>
/// <remarks>
/// Labels are taken four rows at a time: the sixteen possible partial sums of four rows are listed once for a tile of nodes, so that a labelling
/// costs one addition for four rows, from the first-level cache. Source: Arlazarov, Dinic, Kronrod and Faradzhev (1970), Doklady 11:1209–1210.
/// Not for use by two threads at once.
/// </remarks>
internal sealed class LabelSums
{
    /// <summary>Rows that share one table.</summary>
    public const int RowsInGroup = 4;

    private const int Tile = 8;
    private const int Patterns = 1 << RowsInGroup;

    private readonly double[] _set;
    private readonly double[] _clear;
    private readonly int _padded;
    private readonly double[] _table;

    /// <summary>Prepares the sums.</summary>
    /// <param name="rows">One curve a row.</param>
    /// <param name="nodes">Nodes of a curve.</param>
    /// <param name="signed">Whether an unlabelled row counts with its sign turned (sign flips) in place of not at all (group sums).</param>
    public LabelSums(IReadOnlyList<double[]> rows, int nodes, bool signed)
    {
        Nodes = nodes;
        Groups = (rows.Count + RowsInGroup - 1) / RowsInGroup;
        _padded = (nodes + Tile - 1) / Tile * Tile;
        _set = new double[Groups * RowsInGroup * _padded];
        _clear = new double[_set.Length];
        for (var i = 0; i < rows.Count; i++)
        {
            rows[i].AsSpan().CopyTo(_set.AsSpan(i * _padded));
            for (var node = 0; signed && node < nodes; node++)
                _clear[(i * _padded) + node] = -rows[i][node];
        }

        _table = new double[Groups * Patterns * Tile];
    }

    private LabelSums(LabelSums other)
    {
        (Nodes, Groups, _set, _clear, _padded) = (other.Nodes, other.Groups, other._set, other._clear, other._padded);
        _table = new double[other._table.Length];
    }

    /// <summary>Nodes of a curve.</summary>
    public int Nodes { get; }

    /// <summary>Label bytes of one labelling: four rows each, lowest bit first.</summary>
    public int Groups { get; }

    /// <summary>A copy for another thread; the rows are shared.</summary>
    public LabelSums Copy() => new(this);

    /// <summary>Largest |sum| over the nodes of each labelling.</summary>
    /// <param name="labels"><see cref="Groups"/> bytes a labelling.</param>
    /// <param name="largest">One number a labelling.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void LargestSums(ReadOnlySpan<byte> labels, Span<double> largest)
    {
        largest.Clear();
        ref var table = ref MemoryMarshal.GetArrayDataReference(_table);
        for (var tile = 0; tile < _padded; tile += Tile)
        {
            FillTable(tile);
            ref var label = ref MemoryMarshal.GetReference(labels);
            for (var i = 0; i < largest.Length; i++)
            {
                Vector256<double> low = default, high = default;
                nuint entry = 0;
                for (var group = 0; group < Groups; group++)
                {
                    var at = entry + ((nuint)label * Tile);
                    low += Vector256.LoadUnsafe(ref table, at);
                    high += Vector256.LoadUnsafe(ref table, at + 4);
                    entry += Patterns * Tile;
                    label = ref Unsafe.Add(ref label, 1);
                }

                var both = Vector256.Max(Vector256.Abs(low), Vector256.Abs(high));
                var pair = Vector128.Max(both.GetLower(), both.GetUpper());
                largest[i] = Math.Max(largest[i], Math.Max(pair.ToScalar(), pair.GetElement(1)));
            }
        }
    }

    /// <summary>The sum at every node of each labelling.</summary>
    /// <param name="labels"><see cref="Groups"/> bytes a labelling.</param>
    /// <param name="sums"><see cref="Nodes"/> numbers a labelling.</param>
    public void Sums(ReadOnlySpan<byte> labels, Span<double> sums)
    {
        var count = labels.Length / Math.Max(1, Groups);
        for (var tile = 0; tile < _padded; tile += Tile)
        {
            FillTable(tile);
            var width = Math.Min(Tile, Nodes - tile);
            for (var i = 0; i < count; i++)
            {
                var own = labels.Slice(i * Groups, Groups);
                var into = sums.Slice((i * Nodes) + tile, width);
                into.Clear();
                for (var group = 0; group < Groups; group++)
                {
                    var entry = ((group * Patterns) + own[group]) * Tile;
                    for (var j = 0; j < width; j++)
                        into[j] += _table[entry + j];
                }
            }
        }
    }

    private void FillTable(int tile)
    {
        for (var group = 0; group < Groups; group++)
        {
            var first = (group * RowsInGroup * _padded) + tile;
            for (var pattern = 0; pattern < Patterns; pattern++)
            {
                Vector256<double> low = default, high = default;
                for (var row = 0; row < RowsInGroup; row++)
                {
                    var from = ((pattern >> row) & 1) == 1 ? _set : _clear;
                    var at = (nuint)(first + (row * _padded));
                    ref var start = ref MemoryMarshal.GetArrayDataReference(from);
                    low += Vector256.LoadUnsafe(ref start, at);
                    high += Vector256.LoadUnsafe(ref start, at + 4);
                }

                var to = (nuint)(((group * Patterns) + pattern) * Tile);
                low.StoreUnsafe(ref MemoryMarshal.GetArrayDataReference(_table), to);
                high.StoreUnsafe(ref MemoryMarshal.GetArrayDataReference(_table), to + 4);
            }
        }
    }
}
