using SwingStudy.Domain.Sources;
using SwingStudy.Domain.Variables;

namespace SwingStudy.Ingestion.Suggest;

/// <summary>Gives each column one role or variable, the surest first.</summary>
internal static class ColumnAssigner
{
    /// <summary>Fills roles, values and ignored columns of the draft; says which column has which role.</summary>
    public static IReadOnlyDictionary<ColumnRole, ColumnProfile> Assign(FileProfile file, IReadOnlyList<VariableNames> variables, Draft draft)
    {
        var columns = file.Columns.Where(column => column.Heading.Text.Length > 0).ToList();
        var matches = columns.ToDictionary(column => column, column => VariableMatch.Of(column, variables));
        var roles = new Dictionary<ColumnRole, ColumnProfile>();
        var taken = new HashSet<ColumnProfile>();
        foreach (var match in columns.SelectMany(column => RoleMatch.Of(column, file.Rows)).OrderByDescending(match => match.Confidence))
        {
            // A column that is a variable for certain is no role: 'Swing speed' counts no swings.
            var variable = matches[match.Column].Count > 0 ? matches[match.Column][0].Confidence : 0;
            if (match.Confidence >= variable && !taken.Contains(match.Column) && Fits(roles, match.Role))
            {
                roles[match.Role] = match.Column;
                taken.Add(match.Column);
                draft.Say(Key(match.Role), match.Column.Heading.Name, match.Confidence, match.Reason);
            }
        }

        AssignVariables(columns, matches, taken, draft);
        foreach (var column in file.Columns.Where(column => !taken.Contains(column)))
        {
            var nearest = matches.TryGetValue(column, out var near) && near.Count > 0 ? near[0] : null;
            draft.Mapping = draft.Mapping with { Ignore = [.. draft.Mapping.Ignore, column.Heading.Name] };
            draft.Say(
                $"ignore.{column.Heading.Name}",
                column.Heading.Name,
                nearest is null ? 0.6 : Math.Round(Math.Max(0.1, 1 - (nearest.Confidence / VariableMatch.Threshold)), 2),
                nearest is null ? "nothing in the dictionary sounds like it" : $"nearest is {nearest.Variable.Name} ({nearest.Confidence:F2}): {nearest.Reason}");
        }

        return roles;
    }

    private static void AssignVariables(
        List<ColumnProfile> columns, Dictionary<ColumnProfile, IReadOnlyList<VariableMatch>> matches, HashSet<ColumnProfile> taken, Draft draft)
    {
        var chosen = new Dictionary<string, VariableMatch>(StringComparer.Ordinal);
        foreach (var match in matches.Values.SelectMany(list => list)
            .Where(match => match.Confidence >= VariableMatch.Threshold && match.Variable.Level != VariableLevel.Participant)
            .OrderByDescending(match => match.Confidence)
            .ThenBy(match => match.Column.Heading.Position))
        {
            if (taken.Contains(match.Column) || !chosen.TryAdd(match.Variable.Name, match))
                continue;
            taken.Add(match.Column);
        }

        var values = new Dictionary<string, FieldSource>(StringComparer.Ordinal);
        foreach (var column in columns)
        {
            if (chosen.Values.FirstOrDefault(match => match.Column == column) is not { } match)
                continue;
            var signs = Directions.SignsOf(column);
            var isInCells = match.Unit.Unit == FieldSource.UnitInCells;
            values[match.Variable.Name] = new FieldSource
            {
                Column = column.Heading.Name,
                Unit = isInCells ? null : match.Unit.Unit,
                HasUnitInCells = isInCells,
                Missing = Sentinels(match),
                Signs = signs,
                Mirror = signs.Count > 0,
            };
            draft.Say($"values.{match.Variable.Name}", column.Heading.Name, match.Confidence, match.Reason + Directions.Note(column, match.Variable));
        }

        draft.Mapping = draft.Mapping with { Values = values };
    }

    /// <summary>Numbers that devices write for nothing, where the dictionary calls them impossible.</summary>
    private static IReadOnlyList<string> Sentinels(VariableMatch match)
    {
        double[] usual = [999, 9999, 99999, -999, -9999, -99999];
        var numbers = match.Column.Sorted();
        return [.. usual
            .Where(number => Array.BinarySearch(numbers, number) >= 0 && (number > (match.Variable.Maximum ?? double.MaxValue) || number < (match.Variable.Minimum ?? double.MinValue)))
            .Select(number => number.ToString(System.Globalization.CultureInfo.InvariantCulture))];
    }

    private static bool Fits(Dictionary<ColumnRole, ColumnProfile> roles, ColumnRole role) =>
        !roles.ContainsKey(role)
        && !(role == ColumnRole.Moment && (roles.ContainsKey(ColumnRole.Date) || roles.ContainsKey(ColumnRole.TimeOfDay)))
        && !(role is ColumnRole.Date or ColumnRole.TimeOfDay && roles.ContainsKey(ColumnRole.Moment));

    private static string Key(ColumnRole role) => role switch
    {
        ColumnRole.Participant => "participant",
        ColumnRole.Sequence => "sequence",
        ColumnRole.Phase => "phase",
        _ => "time.parts",
    };
}
