using SwingStudy.Domain.Variables;

namespace SwingStudy.Ingestion.Suggest;

/// <summary>What letters behind numbers mean, and for which variables the player's hand tells the sign.</summary>
internal static class Directions
{
    /// <summary>Letters for right and left: right and left (or rechts and links), droite and gauche, derecha and izquierda.</summary>
    private static readonly (string Plus, string Minus)[] Pairs = [("R", "L"), ("D", "G"), ("D", "I")];

    /// <summary>Signs for the letters of a column; empty where it has none or unknown ones.</summary>
    public static IReadOnlyDictionary<string, bool> SignsOf(ColumnProfile column)
    {
        var signs = new Dictionary<string, bool>(StringComparer.OrdinalIgnoreCase);
        if (column.CellLetters.Count == 0 || Array.Find(Pairs, pair => column.CellLetters.All(letter => Is(letter, pair.Plus) || Is(letter, pair.Minus))) is not { Plus: not null } found)
            return signs;
        signs[found.Minus] = true;
        signs[found.Plus] = false;
        return signs;
    }

    /// <summary>What a person must know of the sign of a variable; empty for most.</summary>
    public static string Note(ColumnProfile column, Variable variable)
    {
        var axis = variable.Axis ?? "";
        if (column.CellLetters.Count > 0)
            return $"; cells end with {string.Join(", ", column.CellLetters.Order(StringComparer.Ordinal))}: check which of them is the dictionary's plus ({axis})";
        return axis.Contains("open", StringComparison.Ordinal) || axis.Contains("player's side", StringComparison.Ordinal)
            ? $"; plus is {axis.TrimStart('+', ' ')}: where the device counts to the right whoever swings, add 'mirror: true' for left-handed players"
            : "";
    }

    private static bool Is(string letter, string other) => letter.Equals(other, StringComparison.OrdinalIgnoreCase);
}
