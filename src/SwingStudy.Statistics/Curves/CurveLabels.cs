using SwingStudy.Statistics.Chance;
using SwingStudy.Statistics.Resampling;

namespace SwingStudy.Statistics.Curves;

/// <summary>Writes labellings of curves, four rows a byte, as <see cref="LabelSums"/> reads them.</summary>
internal sealed class CurveLabels
{
    private readonly int _rows;
    private readonly int _groups;
    private readonly int _chosen;

    private CurveLabels(int rows, int chosen)
    {
        _rows = rows;
        _groups = (rows + LabelSums.RowsInGroup - 1) / LabelSums.RowsInGroup;
        _chosen = chosen;
    }

    /// <summary>Labellings that choose <paramref name="chosen"/> of the rows.</summary>
    public static CurveLabels Choosing(int rows, int chosen) => new(rows, chosen);

    /// <summary>Labellings that give each row either label.</summary>
    public static CurveLabels Flipping(int rows) => new(rows, -1);

    /// <summary>Number of possible labellings; infinity beyond the range of numbers.</summary>
    public double Count => _chosen < 0 ? Math.Pow(2, _rows) : Choices.Binomial(_rows, _chosen);

    /// <summary>The labelling with the first rows labelled: those chosen, or all of them.</summary>
    public byte[] Observed()
    {
        var labels = new byte[_groups];
        for (var row = 0; row < (_chosen < 0 ? _rows : _chosen); row++)
            Label(labels, row);
        return labels;
    }

    /// <summary>Every labelling, one after the other; at most some hundred thousand.</summary>
    public byte[] All()
    {
        var labels = new byte[(int)Count * _groups];
        var at = 0;
        if (_chosen < 0)
        {
            for (var pattern = 0; pattern < 1 << _rows; pattern++, at += _groups)
            {
                for (var row = 0; row < _rows; row++)
                {
                    if (((pattern >> row) & 1) == 1)
                        Label(labels.AsSpan(at, _groups), row);
                }
            }

            return labels;
        }

        var rows = new int[_chosen];
        for (var i = 0; i < _chosen; i++)
            rows[i] = i;
        while (true)
        {
            foreach (var row in rows)
                Label(labels.AsSpan(at, _groups), row);
            at += _groups;
            var last = _chosen - 1;
            while (last >= 0 && rows[last] == _rows - _chosen + last)
                last--;
            if (last < 0)
                return labels;
            rows[last]++;
            for (var i = last + 1; i < _chosen; i++)
                rows[i] = rows[i - 1] + 1;
        }
    }

    /// <summary>Writes random labellings until <paramref name="labels"/> is full.</summary>
    public void Draw(Xoshiro256 chance, Span<byte> labels)
    {
        labels.Clear();
        Span<int> order = stackalloc int[0];
        if (_chosen >= 0)
        {
            order = new int[_rows];
            for (var i = 0; i < order.Length; i++)
                order[i] = i;
        }

        // Choosing the smaller side takes fewer draws; its complement is labelled when that is the side not asked for.
        var few = Math.Min(_chosen, _rows - _chosen);
        for (var at = 0; at < labels.Length; at += _groups)
        {
            var own = labels.Slice(at, _groups);
            if (_chosen < 0)
            {
                for (int group = 0, left = _rows; group < _groups; group++, left -= LabelSums.RowsInGroup)
                    own[group] = (byte)(chance.NextBits() >> 60 & (ulong)((1 << Math.Min(left, LabelSums.RowsInGroup)) - 1));
                continue;
            }

            for (var i = 0; i < few; i++)
            {
                var j = i + chance.NextIndex(_rows - i);
                (order[i], order[j]) = (order[j], order[i]);
            }

            foreach (var row in few == _chosen ? order[..few] : order[few..])
                Label(own, row);
        }
    }

    private static void Label(Span<byte> labels, int row) =>
        labels[row / LabelSums.RowsInGroup] |= (byte)(1 << (row % LabelSums.RowsInGroup));
}
