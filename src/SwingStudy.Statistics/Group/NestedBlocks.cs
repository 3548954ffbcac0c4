namespace SwingStudy.Statistics.Group;

/// <summary>Random intercepts of subjects and of sessions in subjects.</summary>
/// <remarks>
/// With θ = (subject, session) standard deviations over σ: a session of n rows contributes its scatter about the session mean and n/(1 + θ_s² n)
/// times its mean's square; a subject likewise its session means' scatter about their weighted mean and D/(1 + θ_p² D) times that. All terms are
/// positive: nothing cancels, however large one variance is against another.
/// </remarks>
internal sealed class NestedBlocks : MixedModelBlocks
{
    private readonly double[] _within;
    private readonly double[] _means;
    private readonly double[] _counts;
    private readonly int[] _firstOfSubject;
    private readonly bool _hasSessions;

    public NestedBlocks(MixedModelData data, double centre)
        : base(data.FixedColumns.Length, data.Count)
    {
        _hasSessions = data.Sessions is not null;
        var leaves = data.Sessions ?? data.Subjects;
        var count = _hasSessions ? data.SessionCount : data.SubjectCount;
        var order = LeavesBySubject(data, leaves, count, out _firstOfSubject);
        (_counts, _means, _within) = (new double[count], new double[count * Width], new double[Width * Width]);
        Sum(data, leaves, order, centre);
        Scatter(data, leaves, order, centre);
    }

    public override int Parameters => _hasSessions ? 2 : 1;

    public override double Accumulate(ReadOnlySpan<double> theta, Span<double> total)
    {
        var (subject, session) = (theta[0] * theta[0], _hasSessions ? theta[1] * theta[1] : 0);
        var width = Width;
        for (var i = 0; i < width * width; i++)
            total[i] += _within[i];
        var logarithm = new LogProduct();
        Span<double> centre = stackalloc double[width];
        Span<double> deviation = stackalloc double[width];
        for (var s = 0; s + 1 < _firstOfSubject.Length; s++)
        {
            var (first, last) = (_firstOfSubject[s], _firstOfSubject[s + 1]);
            centre.Clear();
            var sum = 0.0;
            for (var j = first; j < last; j++)
            {
                var growth = 1 + (session * _counts[j]);
                logarithm.Multiply(growth);
                var weight = _counts[j] / growth;
                sum += weight;
                for (var c = 0; c < width; c++)
                    centre[c] += weight * _means[(j * width) + c];
            }

            for (var c = 0; c < width; c++)
                centre[c] /= sum;
            for (var j = first; j < last; j++)
            {
                for (var c = 0; c < width; c++)
                    deviation[c] = _means[(j * width) + c] - centre[c];
                AddSquare(total, deviation, _counts[j] / (1 + (session * _counts[j])));
            }

            var growthOfSubject = 1 + (subject * sum);
            logarithm.Multiply(growthOfSubject);
            AddSquare(total, centre, sum / growthOfSubject);
        }

        return logarithm.Value;
    }

    private static void AddSquare(Span<double> total, ReadOnlySpan<double> vector, double weight)
    {
        var width = vector.Length;
        for (var r = 0; r < width; r++)
        {
            var scaled = weight * vector[r];
            var row = total.Slice(r * width, r + 1);
            for (var c = 0; c < row.Length; c++)
                row[c] += scaled * vector[c];
        }
    }

    /// <summary>Place of each leaf such that leaves of one subject follow each other.</summary>
    private static int[] LeavesBySubject(MixedModelData data, int[] leaves, int count, out int[] firstOfSubject)
    {
        var subjectOf = new int[count];
        for (var i = 0; i < leaves.Length; i++)
            subjectOf[leaves[i]] = data.Subjects[i];
        firstOfSubject = new int[data.SubjectCount + 1];
        foreach (var subject in subjectOf)
            firstOfSubject[subject + 1]++;
        for (var s = 0; s < data.SubjectCount; s++)
            firstOfSubject[s + 1] += firstOfSubject[s];
        var next = firstOfSubject.AsSpan(0, data.SubjectCount).ToArray();
        var order = new int[count];
        for (var leaf = 0; leaf < count; leaf++)
            order[leaf] = next[subjectOf[leaf]]++;
        return order;
    }

    private void Sum(MixedModelData data, int[] leaves, int[] order, double centre)
    {
        for (var i = 0; i < leaves.Length; i++)
            _counts[order[leaves[i]]]++;
        for (var c = 0; c < Width; c++)
        {
            var column = c < FixedEffects ? data.FixedColumns[c] : data.Values;
            var offset = c < FixedEffects ? 0 : centre;
            for (var i = 0; i < leaves.Length; i++)
                _means[(order[leaves[i]] * Width) + c] += column[i] - offset;
        }

        for (var j = 0; j < _counts.Length; j++)
        {
            for (var c = 0; c < Width; c++)
                _means[(j * Width) + c] /= _counts[j];
        }
    }

    private void Scatter(MixedModelData data, int[] leaves, int[] order, double centre)
    {
        Span<double> row = stackalloc double[Width];
        for (var i = 0; i < leaves.Length; i++)
        {
            var mean = _means.AsSpan(order[leaves[i]] * Width, Width);
            for (var c = 0; c < FixedEffects; c++)
                row[c] = data.FixedColumns[c][i] - mean[c];
            row[FixedEffects] = data.Values[i] - centre - mean[FixedEffects];
            AddSquare(_within, row, 1);
        }
    }

    /// <summary>ln of a product, taking one logarithm for many factors.</summary>
    private struct LogProduct
    {
        private double _product = 1;
        private double _sum;

        public LogProduct()
        {
        }

        public readonly double Value => _sum + Math.Log(_product);

        public void Multiply(double factor)
        {
            _product *= factor;
            if (_product > 1e200)
            {
                _sum += Math.Log(_product);
                _product = 1;
            }
        }
    }
}
