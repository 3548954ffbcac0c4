namespace SwingStudy.Statistics.Catalogue;

/// <summary>A tidy table handed to one statistic: parallel columns, one row an observation, plus the settings of the call.</summary>
/// <remarks>
/// The uniform entry to every statistic of the catalogue. The functions themselves take spans and are called directly where the shape is known.
/// </remarks>
public sealed record TidyInput
{
    /// <summary>The observations, canonical unit.</summary>
    public required IReadOnlyList<double> Values { get; init; }

    /// <summary>The condition of each observation; null when the table has no such column.</summary>
    public IReadOnlyList<string>? Conditions { get; init; }

    /// <summary>The subject of each observation; null when the table has no such column.</summary>
    public IReadOnlyList<string>? Subjects { get; init; }

    /// <summary>The session of each observation, unique within subject; null when the table has no such column.</summary>
    public IReadOnlyList<string>? Sessions { get; init; }

    /// <summary>Time or another predictor of each observation; null when the table has no such column.</summary>
    public IReadOnlyList<double>? Predictors { get; init; }

    /// <summary>Sampling variance of each observation; null when the table has no such column.</summary>
    public IReadOnlyList<double>? Variances { get; init; }

    /// <summary>Confidence level of intervals, a share.</summary>
    public double Confidence { get; init; } = 0.95;

    /// <summary>Seed of whatever is drawn by chance.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>Further settings by name, such as <c>smallest-worthwhile</c>; a statistic documents the ones it reads.</summary>
    public IReadOnlyDictionary<string, double> Settings { get; init; } = new Dictionary<string, double>();

    /// <summary>A setting, or <paramref name="otherwise"/> when it was not given.</summary>
    public double Setting(string name, double otherwise) => Settings.TryGetValue(name, out var value) ? value : otherwise;

    /// <summary>The columns that the table has.</summary>
    public InputColumns Columns =>
        InputColumns.Value
        | (Conditions is null ? InputColumns.None : InputColumns.Condition)
        | (Subjects is null ? InputColumns.None : InputColumns.Subject)
        | (Sessions is null ? InputColumns.None : InputColumns.Session)
        | (Predictors is null ? InputColumns.None : InputColumns.Predictor)
        | (Variances is null ? InputColumns.None : InputColumns.Variance);

    /// <summary>The values of each condition, in order of first appearance; within a condition in row order.</summary>
    public IReadOnlyList<(string Condition, double[] Values)> ByCondition() => GroupedBy(Conditions);

    /// <summary>The values of each subject, in order of first appearance; within a subject in row order.</summary>
    public IReadOnlyList<(string Subject, double[] Values)> BySubject() => GroupedBy(Subjects);

    /// <summary>The numbers of each distinct label, 0-based in order of first appearance.</summary>
    public static int[] Index(IReadOnlyList<string> labels)
    {
        var numbers = new Dictionary<string, int>(StringComparer.Ordinal);
        var index = new int[labels.Count];
        for (var i = 0; i < index.Length; i++)
        {
            if (!numbers.TryGetValue(labels[i], out var number))
                numbers[labels[i]] = number = numbers.Count;
            index[i] = number;
        }

        return index;
    }

    /// <summary>Checks that every column is as long as <see cref="Values"/> and that the confidence is a share.</summary>
    /// <exception cref="ArgumentException">A column has another length, or the confidence is not between 0 and 1.</exception>
    public void Validate()
    {
        Expect(Conditions?.Count, nameof(Conditions));
        Expect(Subjects?.Count, nameof(Subjects));
        Expect(Sessions?.Count, nameof(Sessions));
        Expect(Predictors?.Count, nameof(Predictors));
        Expect(Variances?.Count, nameof(Variances));
        if (!(Confidence > 0 && Confidence < 1))
            throw new ArgumentException($"Confidence is a share between 0 and 1, such as 0.95; got {Confidence}.", nameof(Confidence));
    }

    private void Expect(int? count, string column)
    {
        if (count is { } length && length != Values.Count)
            throw new ArgumentException($"Column {column} has {length} rows, but there are {Values.Count} values.", column);
    }

    private List<(string, double[])> GroupedBy(IReadOnlyList<string>? labels)
    {
        if (labels is null)
            return [];
        var order = new List<string>();
        var values = new Dictionary<string, List<double>>(StringComparer.Ordinal);
        for (var i = 0; i < labels.Count; i++)
        {
            if (!values.TryGetValue(labels[i], out var list))
            {
                values[labels[i]] = list = [];
                order.Add(labels[i]);
            }

            list.Add(Values[i]);
        }

        return order.ConvertAll(label => (label, values[label].ToArray()));
    }
}
