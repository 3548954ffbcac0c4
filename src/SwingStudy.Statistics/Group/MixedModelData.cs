using SwingStudy.Statistics.Description;

namespace SwingStudy.Statistics.Group;

/// <summary>Rows for a linear mixed model: y = X β + random intercept (and slope) of subjects + random intercept of sessions in subjects + error.</summary>
/// <remarks>Rows need not be sorted and groups need not be of equal size.</remarks>
public sealed class MixedModelData
{
    private MixedModelData(double[] values, string[] names, double[][] columns, int[] subjects, int subjectCount, int[]? sessions, int sessionCount, double[]? slope)
    {
        (Values, FixedEffectNames, FixedColumns) = (values, names, columns);
        (Subjects, SubjectCount, Sessions, SessionCount, Slope) = (subjects, subjectCount, sessions, sessionCount, slope);
    }

    /// <summary>Names of the fixed effects, in order.</summary>
    public IReadOnlyList<string> FixedEffectNames { get; }

    /// <summary>Number of rows.</summary>
    public int Count => Values.Length;

    /// <summary>Number of subjects.</summary>
    public int SubjectCount { get; }

    /// <summary>Number of sessions, all subjects together; 0 without sessions.</summary>
    public int SessionCount { get; }

    internal double[] Values { get; }

    internal double[][] FixedColumns { get; }

    /// <summary>0-based subject of each row, numbered by first appearance.</summary>
    internal int[] Subjects { get; }

    /// <summary>0-based session of each row over all subjects; null when the model has none.</summary>
    internal int[]? Sessions { get; }

    /// <summary>Predictor with a random slope by subject; null when the model has none.</summary>
    internal double[]? Slope { get; }

    /// <summary>Puts rows together.</summary>
    /// <param name="values">The outcome, all finite.</param>
    /// <param name="fixedEffects">Name and column of each fixed effect; an intercept is a column of ones.</param>
    /// <param name="subjects">Subject of each row, any numbers.</param>
    /// <param name="sessions">Session of each row, unique within subject; empty for a model without sessions.</param>
    /// <param name="slope">Predictor that gets a random slope by subject, correlated with the random intercept; empty for none.</param>
    /// <exception cref="ArgumentException">Lengths differ, a number is not finite, or there are no more rows than fixed effects.</exception>
    public static MixedModelData Of(
        ReadOnlySpan<double> values,
        IReadOnlyList<(string Name, double[] Column)> fixedEffects,
        ReadOnlySpan<int> subjects,
        ReadOnlySpan<int> sessions = default,
        ReadOnlySpan<double> slope = default)
    {
        Finite.Require(values, nameof(values));
        Finite.Require(slope, nameof(slope));
        var n = values.Length;
        if (subjects.Length != n || (!sessions.IsEmpty && sessions.Length != n) || (!slope.IsEmpty && slope.Length != n))
            throw new ArgumentException($"Columns need {n} rows; got {subjects.Length} subjects, {sessions.Length} sessions and {slope.Length} slope values.");
        foreach (var (name, column) in fixedEffects)
        {
            Finite.Require(column, name);
            if (column.Length != n)
                throw new ArgumentException($"Column '{name}' has {column.Length} rows, but there are {n} values.", nameof(fixedEffects));
        }

        if (fixedEffects.Count == 0 || n <= fixedEffects.Count)
            throw new ArgumentException($"A mixed model needs at least one fixed effect and more rows than fixed effects; got {n} rows, {fixedEffects.Count} effects.");
        var (subjectIndex, subjectCount) = Number(subjects, default);
        var (sessionIndex, sessionCount) = sessions.IsEmpty ? (null, 0) : Number(subjects, sessions);
        return new MixedModelData(
            values.ToArray(),
            [.. fixedEffects.Select(f => f.Name)],
            [.. fixedEffects.Select(f => f.Column)],
            subjectIndex,
            subjectCount,
            sessionIndex,
            sessionCount,
            slope.IsEmpty ? null : slope.ToArray());
    }

    /// <summary>Numbers of (subject, session), by first appearance. Rows of one group mostly follow each other, which saves the look-up.</summary>
    private static (int[] Index, int Count) Number(ReadOnlySpan<int> subjects, ReadOnlySpan<int> sessions)
    {
        var numbers = new Dictionary<(int, int), int>();
        var index = new int[subjects.Length];
        for (var i = 0; i < index.Length; i++)
        {
            var session = sessions.IsEmpty ? 0 : sessions[i];
            if (i > 0 && subjects[i] == subjects[i - 1] && (sessions.IsEmpty || session == sessions[i - 1]))
            {
                index[i] = index[i - 1];
                continue;
            }

            if (!numbers.TryGetValue((subjects[i], session), out var number))
                numbers[(subjects[i], session)] = number = numbers.Count;
            index[i] = number;
        }

        return (index, numbers.Count);
    }
}
