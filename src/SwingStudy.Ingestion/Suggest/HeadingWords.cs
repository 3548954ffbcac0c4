using System.Globalization;
using System.Text;

namespace SwingStudy.Ingestion.Suggest;

/// <summary>Compares headings with the words of a dictionary: without case, accents, signs, order or small slips of spelling.</summary>
internal static class HeadingWords
{
    private const double SameWord = 0.8;

    /// <summary>Words that carry no meaning of their own in headings of the languages that synonyms use.</summary>
    private static readonly HashSet<string> Empty =
        ["of", "the", "a", "an", "in", "at", "to", "de", "du", "des", "la", "le", "les", "l", "d", "der", "die", "das", "von", "vom", "el", "los", "do", "da", "dos", "em", "am", "im"];

    /// <summary>Short forms that exports use for whole words.</summary>
    private static readonly Dictionary<string, string> Short = new(StringComparer.Ordinal)
    {
        ["spd"] = "speed",
        ["vel"] = "speed",
        ["velocity"] = "speed",
        ["ang"] = "angle",
        ["dist"] = "distance",
        ["temp"] = "temperature",
        ["horiz"] = "horizontal",
        ["vert"] = "vertical",
        ["dir"] = "direction",
        ["pct"] = "percent",
        ["avg"] = "average",
        ["#"] = "no",
        ["nr"] = "no",
        ["num"] = "no",
        ["number"] = "no",
        ["nummer"] = "no",
        ["numero"] = "no",
        ["n°"] = "no",
    };

    /// <summary>The words of a heading in lower case, without accents; camelCase and signs part them.</summary>
    public static string[] Of(string heading)
    {
        var text = new StringBuilder(heading.Length + 8);
        var before = ' ';
        var letters = heading.Normalize(NormalizationForm.FormD);
        for (var i = 0; i < letters.Length; i++)
        {
            var sign = letters[i];
            if (char.GetUnicodeCategory(sign) == UnicodeCategory.NonSpacingMark)
                continue;
            if (char.IsUpper(sign) && char.IsLower(before) && i + 1 < letters.Length && char.IsLetter(letters[i + 1]))
                text.Append(' ');
            text.Append(char.IsLetterOrDigit(sign) ? char.ToLowerInvariant(sign) : sign == 'ß' ? 's' : sign is '#' or '°' ? sign : ' ');
            before = sign;
        }

        return [.. text.ToString().Split(' ', StringSplitOptions.RemoveEmptyEntries)
            .Where(word => !Empty.Contains(word))
            .Select(word => Short.GetValueOrDefault(word, word))];
    }

    /// <summary>How alike two headings are: 1 for the same words, 0.95 in another order or written together, less for what is missing or misspelt.</summary>
    public static double Likeness(string[] heading, string[] words)
    {
        if (heading.Length == 0 || words.Length == 0)
            return 0;
        if (heading.AsSpan().SequenceEqual(words))
            return 1;
        if (string.Concat(heading) == string.Concat(words) || heading.Order(StringComparer.Ordinal).SequenceEqual(words.Order(StringComparer.Ordinal)))
            return 0.95;
        var matched = heading.Sum(word => words.Max(other => Likeness(word, other)));
        var covered = words.Sum(word => heading.Max(other => Likeness(word, other)));
        return 0.9 * (matched + covered) / (heading.Length + words.Length);
    }

    /// <summary>How alike two words are: 1 when the same, below that by letters to change, or when one is the beginning of the other.</summary>
    private static double Likeness(string word, string other)
    {
        if (word == other)
            return 1;
        var (shorter, longer) = word.Length < other.Length ? (word, other) : (other, word);
        if (shorter.Length >= 3 && longer.StartsWith(shorter, StringComparison.Ordinal))
            return 0.85;
        if (shorter.Length < 4)
            return 0;
        var share = 1 - ((double)Changes(word, other) / longer.Length);
        return share >= SameWord ? share : 0;
    }

    /// <summary>Levenshtein distance: letters to insert, take out or exchange.</summary>
    private static int Changes(string from, string to)
    {
        var row = Enumerable.Range(0, to.Length + 1).ToArray();
        for (var i = 1; i <= from.Length; i++)
        {
            var diagonal = row[0];
            row[0] = i;
            for (var j = 1; j <= to.Length; j++)
            {
                var above = row[j];
                row[j] = Math.Min(Math.Min(row[j], row[j - 1]) + 1, diagonal + (from[i - 1] == to[j - 1] ? 0 : 1));
                diagonal = above;
            }
        }

        return row[^1];
    }
}
