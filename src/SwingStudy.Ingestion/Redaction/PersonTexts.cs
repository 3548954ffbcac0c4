using System.Text.RegularExpressions;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Storage.Identities;

namespace SwingStudy.Ingestion.Redaction;

/// <summary>The texts by which one person can be found in files: pseudonym, aliases, name, contact.</summary>
public sealed class PersonTexts
{
    /// <summary>Shorter texts, and numbers, say nothing outside the cell of the player: they stand for many things.</summary>
    private const int TellingLetters = 3;

    /// <summary>From that length on a text does not occur among bytes by chance.</summary>
    private const int TooLongForChance = 7;

    /// <summary>Characters of text beside a short one that make it no chance.</summary>
    private const int TextBeside = 5;

    /// <summary>Zero bytes that pad a text field to its length.</summary>
    private const int Padding = 4;

    private readonly HashSet<string> _exact;
    private readonly string[] _telling;
    private readonly Regex? _written;

    /// <summary>Takes what is known of the person.</summary>
    /// <param name="participant">Pseudonym.</param>
    /// <param name="aliases">Aliases as they were given.</param>
    /// <param name="names">Name and contact.</param>
    public PersonTexts(ParticipantId participant, IReadOnlyList<string> aliases, PersonNames names)
    {
        Participant = participant;
        string[] all = [participant.ToString(), .. aliases, .. new[] { names.Name, names.Contact }.OfType<string>()];
        _exact = all.Select(AliasText.Normalize).ToHashSet(StringComparer.Ordinal);
        string[] telling = [.. all.Where((text, i) => i == 0 || text.Count(char.IsLetter) >= TellingLetters)];
        _telling = [.. telling.Select(AliasText.Normalize).Distinct(StringComparer.Ordinal)];
        _written = telling.Length == 0 ? null : new Regex(
            $"(?<![\\p{{L}}\\p{{Nd}}])(?:{string.Join('|', telling.OrderByDescending(text => text.Length).Select(Spelling))})(?![\\p{{L}}\\p{{Nd}}])",
            RegexOptions.IgnoreCase | RegexOptions.CultureInvariant);
    }

    /// <summary>Pseudonym.</summary>
    public ParticipantId Participant { get; }

    /// <summary>Whether a cell that names a player names this one.</summary>
    public bool Is(string cell) => _exact.Contains(AliasText.Normalize(cell));

    /// <summary>Whether the person is named anywhere in a text, however it is spelt.</summary>
    public bool IsNamedIn(string text)
    {
        if (text.Length == 0)
            return false;
        var normalized = AliasText.Normalize(text);
        return _telling.Any(name => StandsIn(normalized, name));
    }

    /// <summary>Whether the person is named in bytes that are no text, read as if they were: a short name counts only beside other text, or padded with zeros.</summary>
    public bool IsNamedAmongBytes(string text)
    {
        var normalized = AliasText.Normalize(text);
        return _telling.Any(name => StandsIn(normalized, name, (at, end) => name.Length >= TooLongForChance || IsBesideText(normalized, at, end)));
    }

    /// <summary>The text without the person's names; empty where a spelling cannot be cut out of it.</summary>
    public string Without(string text)
    {
        if (!IsNamedIn(text))
            return text;
        var cut = _written?.Replace(text, "") ?? text;
        return IsNamedIn(cut) ? "" : cut;
    }

    private static bool IsBesideText(string text, int at, int end)
    {
        int beside = 0, zeros = 0;
        for (var i = at - 1; i >= 0 && text[i] is >= ' ' and <= '~' && beside < TextBeside; i--)
            beside++;
        for (var i = end; i < text.Length && text[i] is >= ' ' and <= '~' && beside < TextBeside; i++)
            beside++;
        for (var i = end; i < text.Length && text[i] == '\0' && zeros < Padding; i++)
            zeros++;
        return beside == TextBeside || zeros == Padding;
    }

    private static bool StandsIn(string text, string name, Func<int, int, bool>? counts = null)
    {
        for (var at = 0; (at = text.IndexOf(name, at, StringComparison.Ordinal)) >= 0; at++)
        {
            var end = at + name.Length;
            if ((at == 0 || !char.IsLetterOrDigit(text[at - 1])) && (end == text.Length || !char.IsLetterOrDigit(text[end])) && counts?.Invoke(at, end) != false)
                return true;
        }

        return false;
    }

    private static string Spelling(string text) => string.Join("\\s+", text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries).Select(Regex.Escape));
}
