namespace SwingStudy.Ingestion.Readers.C3d;

/// <summary>The parameters of a C3D file, found by group and name without case. Of several of one name the first that is not empty counts.</summary>
public sealed class C3dParameters
{
    private readonly Dictionary<(string Group, string Name), C3dParameter> _byName = [];

    internal C3dParameters(IReadOnlyList<C3dParameter> all)
    {
        All = all;
        foreach (var parameter in all)
        {
            var key = Key(parameter.Group, parameter.Name);
            if (!_byName.TryGetValue(key, out var known) || (known.Data.Length == 0 && parameter.Data.Length > 0))
                _byName[key] = parameter;
        }
    }

    /// <summary>All of them, in file order.</summary>
    public IReadOnlyList<C3dParameter> All { get; }

    /// <summary>The parameter; null when there is none.</summary>
    public C3dParameter? Find(string group, string name) => _byName.GetValueOrDefault(Key(group, name));

    /// <summary>The first number of a parameter, integers unsigned; null when there is none.</summary>
    public double? Count(string group, string name) => Find(group, name)?.Counts() is { Length: > 0 } values ? values[0] : null;

    /// <summary>The first number of a parameter, integers signed; null when there is none.</summary>
    public double? Number(string group, string name) => Find(group, name)?.Numbers() is { Length: > 0 } values ? values[0] : null;

    /// <summary>All numbers of a parameter; none when it is missing.</summary>
    public double[] Numbers(string group, string name) => Find(group, name)?.Numbers() ?? [];

    /// <summary>Texts of a parameter and of its continuations NAME2, NAME3 and so on.</summary>
    public IReadOnlyList<string> Texts(string group, string name)
    {
        var texts = new List<string>(Find(group, name)?.Texts() ?? []);
        for (var i = 2; Find(group, $"{name}{i}") is { } next; i++)
            texts.AddRange(next.Texts());
        return texts;
    }

    /// <summary>Numbers of a parameter and of its continuations.</summary>
    /// <param name="group">Its group.</param>
    /// <param name="name">Its name.</param>
    /// <param name="isUnsigned">Whether integers are unsigned.</param>
    public IReadOnlyList<double> Joined(string group, string name, bool isUnsigned)
    {
        var numbers = new List<double>(Values(Find(group, name)));
        for (var i = 2; Find(group, $"{name}{i}") is { } next; i++)
            numbers.AddRange(Values(next));
        return numbers;

        double[] Values(C3dParameter? parameter) => parameter is null ? [] : isUnsigned ? parameter.Counts() : parameter.Numbers();
    }

    private static (string Group, string Name) Key(string group, string name) => (group.ToUpperInvariant(), name.ToUpperInvariant());
}
