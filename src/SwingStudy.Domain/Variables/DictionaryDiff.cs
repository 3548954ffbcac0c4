namespace SwingStudy.Domain.Variables;

/// <summary>What changed between two dictionaries, and whether the declared version says so.</summary>
/// <param name="From">Version before.</param>
/// <param name="To">Version after.</param>
/// <param name="Changes">All differences: the heaviest first, then by variable.</param>
public sealed record DictionaryDiff(Version From, Version To, IReadOnlyList<DictionaryChange> Changes)
{
    /// <summary>The weight of the heaviest change.</summary>
    public ChangeWeight Weight => Changes.Count == 0 ? ChangeWeight.None : Changes[0].Weight;

    /// <summary>Whether data written under the older version can mean something else under the newer.</summary>
    public bool Breaks => Weight == ChangeWeight.Major;

    /// <summary>The lowest version that the changes allow.</summary>
    public Version LeastVersion => Weight switch
    {
        ChangeWeight.Major => new(From.Major + 1, 0, 0),
        ChangeWeight.Minor => new(From.Major, From.Minor + 1, 0),
        ChangeWeight.Patch => new(From.Major, From.Minor, From.Build + 1),
        _ => From,
    };

    /// <summary>Whether the declared version is high enough.</summary>
    public bool VersionFits => To >= LeastVersion;

    /// <summary>Compares two dictionaries.</summary>
    public static DictionaryDiff Between(VariableDictionary before, VariableDictionary after)
    {
        var changes = new List<DictionaryChange>();
        foreach (var old in before.Variables)
        {
            if (after.TryGet(old.Name, out var now))
                changes.AddRange(VariableComparison.Between(old, now));
            else
                changes.Add(new(old.Name, "variable", old.Title, null, ChangeWeight.Major, "its column is gone; a renamed variable is one gone and one added"));
        }

        changes.AddRange(after.Variables
            .Where(now => !before.TryGet(now.Name, out _))
            .Select(now => new DictionaryChange(now.Name, "variable", null, now.Title, ChangeWeight.Minor, "a new column, empty in older data")));
        if (Order(before, after) is { } order)
            changes.Add(order);
        return new(before.Version, after.Version, [.. changes.OrderByDescending(change => change.Weight).ThenBy(change => change.Variable, StringComparer.Ordinal)]);
    }

    private static DictionaryChange? Order(VariableDictionary before, VariableDictionary after)
    {
        var old = before.Variables.Select(variable => variable.Name).Where(name => after.TryGet(name, out _)).ToList();
        var now = after.Variables.Select(variable => variable.Name).Where(name => before.TryGet(name, out _)).ToList();
        var first = old.Zip(now).FirstOrDefault(pair => pair.First != pair.Second);
        return first.First is null
            ? null
            : new(first.Second, "order", $"after {first.First}", $"before {first.First}", ChangeWeight.Minor, "columns stand in another order");
    }
}
