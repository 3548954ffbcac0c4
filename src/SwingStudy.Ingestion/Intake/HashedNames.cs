using System.Text;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Storage.Identities;

namespace SwingStudy.Ingestion.Intake;

/// <summary>Finds names in texts while the vault is locked: runs of words are hashed and looked up, longest first.</summary>
/// <param name="identities">The aliases.</param>
internal sealed class HashedNames(IdentityStore identities)
{
    private readonly int _mostWords = identities.MostWords;
    private readonly Dictionary<string, ParticipantId?> _known = new(StringComparer.Ordinal);

    /// <summary>The text with each name replaced by its code.</summary>
    public string Mask(string text)
    {
        var words = Words(text);
        var masked = new StringBuilder(text.Length);
        var done = 0;
        for (var i = 0; i < words.Count; i++)
        {
            for (var last = Math.Min(words.Count, i + _mostWords) - 1; last >= i; last--)
            {
                var (from, upTo) = (words[i].From, words[last].UpTo);
                if (Find(text[from..upTo]) is not { } person)
                    continue;
                masked.Append(text, done, from - done).Append(person);
                (done, i) = (upTo, last);
                break;
            }
        }

        return done == 0 ? text : masked.Append(text, done, text.Length - done).ToString();
    }

    private ParticipantId? Find(string words)
    {
        if (!_known.TryGetValue(words, out var person))
            _known[words] = person = identities.Resolve(words);
        return person;
    }

    /// <summary>Words, and words with the signs around them: an alias may end in a full stop.</summary>
    private static List<(int From, int UpTo)> Words(string text)
    {
        var words = new List<(int, int)>();
        for (var i = 0; i < text.Length;)
        {
            if (IsBorder(text[i]))
            {
                i++;
                continue;
            }

            var from = i;
            while (i < text.Length && !IsBorder(text[i]))
                i++;
            words.Add((from, i));
        }

        return words;
    }

    private static bool IsBorder(char letter) => char.IsWhiteSpace(letter) || letter is ',' or ';' or '"' or '|' or '\'' or ':' or '=' or '(' or ')';
}
