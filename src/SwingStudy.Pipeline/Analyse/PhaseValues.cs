using SwingStudy.Statistics.Change;

namespace SwingStudy.Pipeline.Analyse;

/// <summary>One player's counted values in the two phases of a contrast.</summary>
internal static class PhaseValues
{
    /// <summary>Session by session, each in order of time.</summary>
    public static ChangeData Of(IEnumerable<CountedValue> values, ContrastSetting contrast)
    {
        CountedValue[] compared = [.. values.Where(value => value.Phase == contrast.From || value.Phase == contrast.To)];
        var numbers = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var value in compared)
            numbers.TryAdd(value.Session, numbers.Count);
        return ChangeData.Of(
            [.. compared.Select(value => value.Value)],
            [.. compared.Select(value => numbers[value.Session])],
            [.. compared.Select(value => value.Phase == contrast.From ? 0 : 1)]);
    }
}
