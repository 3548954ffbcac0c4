using System.Globalization;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Problems;
using YamlDotNet.RepresentationModel;

namespace SwingStudy.Domain.Declarations.Yaml;

/// <summary>
/// A group of keys in a declaration, read key by key. What is wrong is noted with its line and reading goes on; keys that nobody asked for
/// are unknown (<see cref="Done"/>), so what the reader reads is by itself the list of what may be written.
/// </summary>
internal sealed class YamlMap
{
    private readonly YamlMappingNode _node;
    private readonly ProblemList _problems;
    private readonly Dictionary<string, YamlNode> _values = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> _lines = new(StringComparer.Ordinal);
    private readonly HashSet<string> _asked = new(StringComparer.Ordinal);

    public YamlMap(YamlMappingNode node, ProblemList problems, string subject)
    {
        _node = node;
        _problems = problems;
        Subject = subject;
        foreach (var (key, value) in node.Children)
        {
            if (key is not YamlScalarNode { Value: { } name })
                continue;
            _values[name] = value;
            _lines[name] = LineOf(key);
        }
    }

    /// <summary>What the group declares, for messages: "variable 'ball_speed'".</summary>
    public string Subject { get; }

    /// <summary>Line of the group's first key.</summary>
    public int Line => LineOf(_node);

    /// <summary>Keys in file order.</summary>
    public IReadOnlyCollection<string> Keys => _values.Keys;

    /// <summary>Where the key stands, or the group when it does not.</summary>
    public Place PlaceOf(string key) => _problems.At(_lines.TryGetValue(key, out var line) ? line : Line);

    /// <summary>Line of the key.</summary>
    public int LineOf(string key) => _lines.TryGetValue(key, out var line) ? line : Line;

    /// <summary>Notes a problem.</summary>
    public void Note(Problem problem) => _problems.Add(problem);

    /// <summary>Whether the key is there.</summary>
    public bool Has(string key)
    {
        _asked.Add(key);
        return _values.ContainsKey(key);
    }

    /// <summary>A text that must be there; empty, with a problem, when it is not.</summary>
    public string Text(string key, string meaning)
    {
        if (Has(key))
            return OptionalText(key) ?? "";
        _problems.Add(Messages.KeyMissing(PlaceOf(key), Subject, key, meaning));
        return "";
    }

    /// <summary>A text, or null when the key is not there.</summary>
    public string? OptionalText(string key) => Ask(key) is { } node ? TextOf(node, key) : null;

    /// <summary>Texts of a list; none when the key is not there.</summary>
    public IReadOnlyList<string> Texts(string key)
    {
        if (Ask(key) is not { } node)
            return [];
        if (node is YamlSequenceNode list)
            return [.. list.Select(item => TextOf(item, key)).OfType<string>()];
        Wrong(node, key, "a list of texts", $"Write '{key}: [first, second]'.");
        return [];
    }

    /// <summary>Pairs of texts; none when the key is not there.</summary>
    public IReadOnlyDictionary<string, string> Pairs(string key) => OptionalMap(key, Subject) is { } map
        ? map.Keys.ToDictionary(name => name, name => map.OptionalText(name) ?? "", StringComparer.OrdinalIgnoreCase)
        : new Dictionary<string, string>();

    /// <summary>A number, or null when the key is not there.</summary>
    public double? OptionalNumber(string key)
    {
        if (Ask(key) is not { } node)
            return null;
        if (node is YamlScalarNode scalar && Scalars.KindOf(scalar) == ScalarKind.Number)
            return Scalars.Number(scalar);
        Wrong(node, key, "a number", "Write it without quotes, with a point as the decimal sign.");
        return null;
    }

    /// <summary>Numbers of a list; null when the key is not there or is wrong.</summary>
    public IReadOnlyList<double>? OptionalNumbers(string key)
    {
        if (Ask(key) is not { } node)
            return null;
        if (node is YamlSequenceNode list && list.All(item => item is YamlScalarNode scalar && Scalars.KindOf(scalar) == ScalarKind.Number))
            return [.. list.Cast<YamlScalarNode>().Select(Scalars.Number)];
        Wrong(node, key, "a list of numbers", $"Write '{key}: [1, 2]'.");
        return null;
    }

    /// <summary>A number that must be there; NaN, with a problem, when it is not.</summary>
    public double Number(string key, string meaning)
    {
        if (Has(key))
            return OptionalNumber(key) ?? double.NaN;
        _problems.Add(Messages.KeyMissing(PlaceOf(key), Subject, key, meaning));
        return double.NaN;
    }

    /// <summary>A whole number of at least <paramref name="least"/>, or null when the key is not there or is wrong.</summary>
    public int? OptionalCount(string key, int least)
    {
        if (OptionalNumber(key) is not { } number)
            return null;
        if (number >= least && number <= int.MaxValue && number == Math.Floor(number))
            return (int)number;
        _problems.Add(Messages.OutOfRange(PlaceOf(key), key, number, string.Create(CultureInfo.InvariantCulture, $"a whole number of {least} or more")));
        return null;
    }

    /// <summary>A whole number that must be there; <paramref name="least"/>, with a problem, when it is not.</summary>
    public int Count(string key, int least, string meaning)
    {
        if (Has(key))
            return OptionalCount(key, least) ?? least;
        _problems.Add(Messages.KeyMissing(PlaceOf(key), Subject, key, meaning));
        return least;
    }

    /// <summary>A seed: a whole number from 0 to 2^64 - 1, or null when the key is not there or is wrong.</summary>
    public ulong? OptionalSeed(string key)
    {
        if (Ask(key) is not { } node)
            return null;
        if (node is YamlScalarNode scalar
            && Scalars.KindOf(scalar) == ScalarKind.Number
            && ulong.TryParse(scalar.Value, NumberStyles.None, CultureInfo.InvariantCulture, out var seed))
        {
            return seed;
        }

        Wrong(node, key, "a whole number of 0 or more", "Write digits alone.");
        return null;
    }

    /// <summary>A seed that must be there; 0, with a problem, when it is not.</summary>
    public ulong Seed(string key, string meaning)
    {
        if (Has(key))
            return OptionalSeed(key) ?? 0;
        _problems.Add(Messages.KeyMissing(PlaceOf(key), Subject, key, meaning));
        return 0;
    }

    /// <summary>Yes or no, or null when the key is not there.</summary>
    public bool? OptionalFlag(string key)
    {
        if (Ask(key) is not { } node)
            return null;
        if (node is YamlScalarNode scalar && Scalars.KindOf(scalar) == ScalarKind.Flag)
            return scalar.Value is "true" or "True" or "TRUE";
        Wrong(node, key, "true or false", "Write true or false without quotes.");
        return null;
    }

    /// <summary>One of an enumeration's words in kebab-case, or null when the key is not there or is wrong.</summary>
    public T? OptionalChoice<T>(string key)
        where T : struct, Enum
    {
        if (OptionalText(key) is not { } text)
            return null;
        foreach (var value in Enum.GetValues<T>())
        {
            if (Word.Of(value) == text)
                return value;
        }

        _problems.Add(Messages.WordUnknown(PlaceOf(key), key, text, Word.All<T>()));
        return null;
    }

    /// <summary>One of an enumeration's words that must be there.</summary>
    public T Choice<T>(string key, string meaning)
        where T : struct, Enum
    {
        if (Has(key))
            return OptionalChoice<T>(key) ?? default;
        _problems.Add(Messages.KeyMissing(PlaceOf(key), Subject, key, meaning));
        return default;
    }

    /// <summary>One of <paramref name="known"/>, or null when the key is not there or is wrong.</summary>
    public string? OptionalWordOf(string key, IReadOnlyCollection<string> known)
    {
        if (OptionalText(key) is not { } text)
            return null;
        if (known.Contains(text))
            return text;
        _problems.Add(Messages.WordUnknown(PlaceOf(key), key, text, known));
        return null;
    }

    /// <summary>One of <paramref name="known"/> that must be there; empty, with a problem, when it is not.</summary>
    public string WordOf(string key, IReadOnlyCollection<string> known)
    {
        if (Has(key))
            return OptionalWordOf(key, known) ?? "";
        _problems.Add(Messages.KeyMissing(PlaceOf(key), Subject, key, "one of " + string.Join(", ", known)));
        return "";
    }

    /// <summary>A group under a key, or null when the key is not there or is no group.</summary>
    public YamlMap? OptionalMap(string key, string subject)
    {
        if (Ask(key) is not { } node)
            return null;
        if (node is YamlMappingNode map)
            return new(map, _problems, subject);
        Wrong(node, key, "a group of keys", $"Write '{key}: {{ key: value }}'.");
        return null;
    }

    /// <summary>Whether a group of keys, rather than a single value, stands under the key.</summary>
    public bool HasGroup(string key) => _values.TryGetValue(key, out var node) && node is YamlMappingNode;

    /// <summary>A group that must be there; null, with a problem, when it is not.</summary>
    public YamlMap? Map(string key, string subject, string meaning)
    {
        if (Has(key))
            return OptionalMap(key, subject);
        _problems.Add(Messages.KeyMissing(PlaceOf(key), Subject, key, meaning));
        return null;
    }

    /// <summary>Groups of a list; none when the key is not there.</summary>
    /// <param name="key">The list's key.</param>
    /// <param name="noun">What one group declares: "variable".</param>
    /// <param name="nameKey">Key of a group that tells it from the others in messages.</param>
    public IReadOnlyList<YamlMap> Maps(string key, string noun, string nameKey)
    {
        if (Ask(key) is not { } node)
            return [];
        if (node is not YamlSequenceNode list)
        {
            Wrong(node, key, "a list of groups", $"Start each group under '{key}:' with '- '.");
            return [];
        }

        var maps = new List<YamlMap>();
        foreach (var item in list)
        {
            if (item is YamlMappingNode map)
                maps.Add(new(map, _problems, NameOf(map, nameKey) is { } name ? $"{noun} '{name}'" : noun));
            else
                _problems.Add(Messages.WrongType(_problems.At(LineOf(item)), key, "a list with " + Scalars.Describe(item), "a list of groups", "Write '- key: value'."));
        }

        return maps;
    }

    /// <summary>Notes every key that was not asked for.</summary>
    public void Done()
    {
        foreach (var key in _values.Keys.Where(key => !_asked.Contains(key)))
            _problems.Add(Messages.KeyUnknown(PlaceOf(key), Subject, key, _asked));
    }

    private static string? NameOf(YamlMappingNode map, string nameKey) =>
        map.Children.TryGetValue(new YamlScalarNode(nameKey), out var node) && node is YamlScalarNode { Value: { Length: > 0 } name } ? name : null;

    private static int LineOf(YamlNode node) => (int)node.Start.Line;

    private YamlNode? Ask(string key) => Has(key) ? _values[key] : null;

    private string? TextOf(YamlNode node, string key)
    {
        if (node is YamlScalarNode scalar && Scalars.KindOf(scalar) == ScalarKind.Text)
            return scalar.Value;
        Wrong(node, key, "a text", node is YamlScalarNode { Value.Length: > 0 } other ? $"Put it in quotes: '{other.Value}'." : "Write the text, or remove the key.");
        return null;
    }

    private void Wrong(YamlNode node, string key, string expected, string mend) =>
        _problems.Add(Messages.WrongType(_problems.At(LineOf(node)), key, Scalars.Describe(node), expected, mend));
}
