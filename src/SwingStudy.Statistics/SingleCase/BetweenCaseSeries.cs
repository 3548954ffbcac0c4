using SwingStudy.Statistics.Description;

namespace SwingStudy.Statistics.SingleCase;

/// <summary>The values of several cases, each in order of time.</summary>
internal sealed class BetweenCaseSeries
{
    private BetweenCaseSeries(int[] caseOf, int[] timeOf, bool[] treated, int[] pairOf, double[] values, double origin, double scale)
    {
        CaseOf = caseOf;
        TimeOf = timeOf;
        Treated = treated;
        PairOf = pairOf;
        Values = values;
        Origin = origin;
        Scale = scale;
        Cases = caseOf.Length == 0 ? 0 : caseOf[^1] + 1;
        var place = new int[caseOf.Length];
        for (var i = 1; i < place.Length; i++)
            place[i] = SamePhase(i, i - 1) ? place[i - 1] + 1 : 0;
        PlaceInPhase = place;
    }

    public int Count => Values.Length;

    public int Cases { get; }

    /// <summary>Case of each value, 0-based, ascending.</summary>
    public int[] CaseOf { get; }

    /// <summary>Session number of each value, ascending within a case.</summary>
    public int[] TimeOf { get; }

    public bool[] Treated { get; }

    /// <summary>Phase pair of each value; all 0 in a design with one change.</summary>
    public int[] PairOf { get; }

    /// <summary>Place of each value in its phase, 0-based.</summary>
    public int[] PlaceInPhase { get; }

    /// <summary>Values minus <see cref="Origin"/>, divided by <see cref="Scale"/>.</summary>
    public double[] Values { get; }

    public double Origin { get; }

    public double Scale { get; }

    public bool SamePhase(int i, int j) => CaseOf[i] == CaseOf[j] && PairOf[i] == PairOf[j] && Treated[i] == Treated[j];

    /// <summary>Checks the columns and sorts the rows by case and time.</summary>
    /// <exception cref="ArgumentException">Columns differ in length, a value is not finite, or a case has two values at one time.</exception>
    public static BetweenCaseSeries Of(
        ReadOnlySpan<int> cases, ReadOnlySpan<int> pairs, ReadOnlySpan<bool> treated, ReadOnlySpan<int> times, ReadOnlySpan<double> values)
    {
        if (cases.Length != values.Length || pairs.Length != values.Length || treated.Length != values.Length || times.Length != values.Length)
            throw new ArgumentException("Every value needs its case, phase, condition and time: the columns differ in length.", nameof(values));
        Finite.Require(values, nameof(values));
        var keys = new (int Case, int Time)[values.Length];
        for (var i = 0; i < keys.Length; i++)
            keys[i] = (cases[i], times[i]);
        var order = Enumerable.Range(0, keys.Length).ToArray();
        Array.Sort((ValueTuple<int, int>[])keys, order);
        var caseOf = new int[order.Length];
        for (var i = 1; i < order.Length; i++)
        {
            if (keys[i] == keys[i - 1])
                throw new ArgumentException($"Case {keys[i].Case} has two values at time {keys[i].Time}.", nameof(times));
            caseOf[i] = caseOf[i - 1] + (keys[i].Case == keys[i - 1].Case ? 0 : 1);
        }

        // Offset and scale go first, so that neither costs digits.
        var origin = values.IsEmpty ? 0 : values[0];
        var scale = 0.0;
        foreach (var y in values)
            scale = Math.Max(scale, Math.Abs(y - origin));
        if (!double.IsFinite(scale))
            throw new ArgumentException("The spread of the values is beyond the range of numbers.", nameof(values));
        if (!double.IsFinite(1 / scale))
            scale = 1;
        var sortedValues = new double[order.Length];
        var sortedTimes = new int[order.Length];
        var sortedPairs = new int[order.Length];
        var sortedTreated = new bool[order.Length];
        for (var i = 0; i < order.Length; i++)
        {
            sortedValues[i] = (values[order[i]] - origin) / scale;
            sortedTimes[i] = times[order[i]];
            sortedPairs[i] = pairs[order[i]];
            sortedTreated[i] = treated[order[i]];
        }

        return new BetweenCaseSeries(caseOf, sortedTimes, sortedTreated, sortedPairs, sortedValues, origin, scale);
    }

    /// <summary>Why the series cannot carry a between-case effect; null when it can.</summary>
    public string? Lack()
    {
        if (Cases < 2)
            return $"needs at least two cases, got {Cases}";
        var phases = new HashSet<(int Case, int Pair, bool Treated)>();
        for (var i = 0; i < Count; i++)
            phases.Add((CaseOf[i], PairOf[i], Treated[i]));
        var pairs = PairOf.Distinct().Count();
        return phases.Count < 2 * pairs * Cases ? "every case needs values in every phase, without and with the intervention" : null;
    }
}
