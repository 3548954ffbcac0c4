namespace SwingStudy.Statistics.Group;

/// <summary>Random intercept and slope of subjects with any covariance, and a random intercept of sessions in subjects if there are sessions.</summary>
/// <remarks>
/// θ = (λ₁₁, λ₂₁, λ₂₂[, session]), Λ lower triangular, slope predictor divided by its root mean square. Inverse by Woodbury's identity,
/// sessions first, then a 2 × 2 system a subject.
/// </remarks>
internal sealed class SlopeBlocks : MixedModelBlocks
{
    private const int Random = 2;

    private readonly int _full;
    private readonly double[] _products;
    private readonly double[] _sessionSums;
    private readonly double[] _sessionCounts;
    private readonly int[] _subjectOfSession;

    public SlopeBlocks(MixedModelData data, double centre, double slopeScale)
        : base(data.FixedColumns.Length, data.Count)
    {
        _full = Random + Width;
        _products = new double[data.SubjectCount * _full * _full];
        _sessionSums = new double[data.SessionCount * _full];
        _sessionCounts = new double[data.SessionCount];
        _subjectOfSession = new int[data.SessionCount];
        Span<double> row = stackalloc double[_full];
        for (var i = 0; i < data.Count; i++)
        {
            row[0] = 1;
            row[1] = data.Slope![i] / slopeScale;
            for (var c = 0; c < FixedEffects; c++)
                row[Random + c] = data.FixedColumns[c][i];
            row[_full - 1] = data.Values[i] - centre;
            AddSquare(_products.AsSpan(data.Subjects[i] * _full * _full, _full * _full), row, 1);
            if (data.Sessions is null)
                continue;
            var session = data.Sessions[i];
            _sessionCounts[session]++;
            _subjectOfSession[session] = data.Subjects[i];
            for (var c = 0; c < _full; c++)
                _sessionSums[(session * _full) + c] += row[c];
        }
    }

    public override int Parameters => _sessionCounts.Length > 0 ? 4 : 3;

    public override double Accumulate(ReadOnlySpan<double> theta, Span<double> total)
    {
        var products = _products;
        var logarithm = 0.0;
        if (_sessionCounts.Length > 0)
        {
            products = (double[])_products.Clone();
            var ratio = theta[3] * theta[3];
            for (var j = 0; j < _sessionCounts.Length; j++)
            {
                var growth = 1 + (ratio * _sessionCounts[j]);
                logarithm += Math.Log(growth);
                AddSquare(products.AsSpan(_subjectOfSession[j] * _full * _full, _full * _full), _sessionSums.AsSpan(j * _full, _full), -ratio / growth);
            }
        }

        for (var s = 0; s < products.Length; s += _full * _full)
            logarithm += AddSubject(products.AsSpan(s, _full * _full), theta, total);
        return logarithm;
    }

    /// <summary>C_rr − C_rz Λ (I + Λ' C_zz Λ)⁻¹ Λ' C_zr for one subject; returns ln of the determinant of the 2 × 2 system.</summary>
    private double AddSubject(ReadOnlySpan<double> c, ReadOnlySpan<double> theta, Span<double> total)
    {
        var (l11, l21, l22) = (theta[0], theta[1], theta[2]);
        var (z11, z21, z22) = (c[0], c[_full], c[_full + 1]);
        var m11 = 1 + (l11 * l11 * z11) + (2 * l11 * l21 * z21) + (l21 * l21 * z22);
        var m21 = l22 * ((l11 * z21) + (l21 * z22));
        var m22 = 1 + (l22 * l22 * z22);
        var r11 = Math.Sqrt(m11);
        var r21 = m21 / r11;
        var r22 = Math.Sqrt(Math.Max(m22 - (r21 * r21), 1e-300));
        Span<double> first = stackalloc double[Width];
        Span<double> second = stackalloc double[Width];
        for (var k = 0; k < Width; k++)
        {
            var (c1, c2) = (c[(Random + k) * _full], c[((Random + k) * _full) + 1]);
            first[k] = ((l11 * c1) + (l21 * c2)) / r11;
            second[k] = ((l22 * c2) - (r21 * first[k])) / r22;
        }

        for (var r = 0; r < Width; r++)
        {
            for (var k = 0; k <= r; k++)
                total[(r * Width) + k] += c[((Random + r) * _full) + Random + k] - (first[r] * first[k]) - (second[r] * second[k]);
        }

        return 2 * Math.Log(r11 * r22);
    }

    private static void AddSquare(Span<double> total, ReadOnlySpan<double> vector, double weight)
    {
        var width = vector.Length;
        for (var r = 0; r < width; r++)
        {
            var scaled = weight * vector[r];
            for (var c = 0; c <= r; c++)
                total[(r * width) + c] += scaled * vector[c];
        }
    }
}
