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

    /// <summary>The series from the first to the last session of the compared phases, sessions of phases between them among it; nothing while a phase is missing.</summary>
    /// <param name="values">One player's counted values of one outcome, all phases, in order of time.</param>
    /// <param name="contrast">The contrast.</param>
    public static IReadOnlyList<PhaseSession> Series(IEnumerable<CountedValue> values, ContrastSetting contrast)
    {
        var numbers = new Dictionary<string, int>(StringComparer.Ordinal) { [contrast.From] = 0, [contrast.To] = 1 };
        var places = new Dictionary<string, int>(StringComparer.Ordinal);
        var swings = new List<(int Place, int Phase, double Value)>();
        foreach (var value in values)
        {
            places.TryAdd(value.Session, places.Count);
            numbers.TryAdd(value.Phase, numbers.Count);
            swings.Add((places[value.Session], numbers[value.Phase], value.Value));
        }

        if (!swings.Exists(swing => swing.Phase == 0) || !swings.Exists(swing => swing.Phase == 1))
            return [];
        var compared = swings.FindAll(swing => swing.Phase < 2);
        var (first, last) = (compared.Min(swing => swing.Place), compared.Max(swing => swing.Place));
        return [.. swings.Where(swing => swing.Place >= first && swing.Place <= last).GroupBy(swing => (swing.Place, swing.Phase))
            .Select(session => new PhaseSession(session.Key.Place, session.Key.Phase, [.. session.Select(swing => swing.Value)]))];
    }
}
