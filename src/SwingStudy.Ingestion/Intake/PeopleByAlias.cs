using System.Globalization;
using System.Text;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.People;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Sources;
using SwingStudy.Ingestion.Mapping;
using SwingStudy.Storage.Identities;
using SwingStudy.Storage.Registry;

namespace SwingStudy.Ingestion.Intake;

/// <summary>Finds the players behind the names of a file.</summary>
internal sealed class PeopleByAlias(IntakeContext study)
{
    private const int MostSuggestions = 2;
    private readonly ConsentStanding _standing = new(study.Eligibility);
    private readonly Dictionary<(ParticipantId, ConsentScope), Problem?> _lacking = [];
    private readonly Dictionary<ParticipantId, string> _statuses = study.Registry.Participants().ToDictionary(person => person.Code, person => person.Status);
    private readonly Lazy<List<(string Alias, ParticipantId Participant)>> _known = new(() =>
        [.. study.Registry.Participants().SelectMany(person => study.Identities.Aliases(person.Code).Append(person.Code.ToString()).Select(alias => (alias, person.Code)))]);

    /// <summary>Puts codes in place of the names of a file and of all names that the study knows, those in a locked vault included.</summary>
    public NameMask Mask(IEnumerable<(string Alias, string Code)> ofFile) => new(
        [.. ofFile, .. _known.Value.Select(known => (known.Alias, known.Participant.ToString()))],
        study.Identities.Vault == VaultState.Locked ? new HashedNames(study.Identities) : null);

    /// <summary>The player of each name in <see cref="MappedFile.Aliases"/>, or a problem for each name that stands for nobody who takes part, or for
    /// somebody who has not consented to what the source needs.</summary>
    public Outcome<IReadOnlyList<ParticipantId>> Resolve(MappedFile file, string name)
    {
        var people = new ParticipantId[file.Aliases.Count];
        var problems = new List<Problem>();
        for (var i = 0; i < people.Length; i++)
        {
            var resolved = Resolve(file.Aliases[i], file.Plan.Mapping, name, FirstLine(file, i));
            people[i] = resolved.Value;
            problems.AddRange(resolved.Problems);
        }

        return problems.Count > 0 ? Outcome<IReadOnlyList<ParticipantId>>.Failed(problems) : people;
    }

    /// <summary>
    /// Which names of a file stand for left-handed players, where a column of the mapping is mirrored for them (null where none is); a problem for each player of
    /// unknown hand.
    /// </summary>
    public Outcome<MappedFile> WithHands(MappedFile file, IReadOnlyList<ParticipantId> people, string name)
    {
        if (file.Plan.Numbers.FirstOrDefault(column => column.IsMirrored) is not { } mirrored)
            return file;
        var hands = people.Select(player => study.Registry.Facts(player).IsRightHanded).ToList();
        var problems = hands.Select((hand, alias) => hand is null ? IntakeMessages.HandUnknown(name, FirstLine(file, alias), people[alias], mirrored.Place.Name) : null).OfType<Problem>().ToList();
        return problems.Count > 0 ? Outcome<MappedFile>.Failed(problems) : file with { LeftHanded = [.. hands.Select(hand => hand == false)] };
    }

    /// <summary>The player of one name, or why there is none who takes part and has consented to what the source needs.</summary>
    public Outcome<ParticipantId> Resolve(string alias, SourceMapping mapping, string name, int line)
    {
        if (Find(alias) is not { } person)
            return study.Identities.IsErased(alias) ? IntakeMessages.PlayerErased(name, line) : IntakeMessages.AliasUnknown(name, line, alias, Near(alias));
        if (_statuses.GetValueOrDefault(person, Participant.Enrolled) is var status and not Participant.Enrolled)
            return IntakeMessages.PlayerLeft(name, line, person, status);
        var lacking = mapping.Consent.Select(scope => Lacking(person, scope)).OfType<Problem>().Select(problem => problem with { Place = new Place(name, line) }).ToList();
        return lacking.Count > 0 ? Outcome<ParticipantId>.Failed(lacking) : person;
    }

    /// <summary>The player of a name or code, whether or not they take part; null when nobody has it.</summary>
    public ParticipantId? Find(string alias)
    {
        if (study.Identities.Resolve(alias) is { } known)
            return known;
        return ParticipantId.IsValid(alias) && _statuses.ContainsKey(new ParticipantId(alias)) ? new ParticipantId(alias) : null;
    }

    private Problem? Lacking(ParticipantId person, ConsentScope scope)
    {
        if (!_lacking.TryGetValue((person, scope), out var lacking))
            _lacking[(person, scope)] = lacking = _standing.Lacking(study.Registry.Facts(person), study.Registry.Consents(person), scope);
        return lacking;
    }

    private static int FirstLine(MappedFile file, int alias) => file.Lines[Array.IndexOf(file.AliasOf, alias)];

    /// <summary>Known names that differ by a few letters once case, blanks and signs are set aside; an accent counts one letter.</summary>
    private List<(string Alias, ParticipantId Participant)> Near(string alias)
    {
        var plain = Plain(alias);
        return [.. _known.Value
            .Select(known => (known, distance: Distance(plain, Plain(known.Alias))))
            .Where(pair => pair.distance <= Math.Max(1, Math.Min(3, plain.Length / 3)))
            .OrderBy(pair => pair.distance).ThenBy(pair => pair.known.Alias, StringComparer.Ordinal)
            .DistinctBy(pair => pair.known.Participant).Take(MostSuggestions).Select(pair => pair.known)];
    }

    private static string Plain(string alias)
    {
        var plain = new StringBuilder(alias.Length);
        foreach (var letter in alias.ToUpperInvariant())
        {
            if (CharUnicodeInfo.GetUnicodeCategory(letter) is UnicodeCategory.NonSpacingMark || char.IsWhiteSpace(letter) || char.IsPunctuation(letter))
                continue;
            plain.Append(letter);
        }

        return plain.ToString();
    }

    /// <summary>Levenshtein distance.</summary>
    private static int Distance(string a, string b)
    {
        var row = Enumerable.Range(0, b.Length + 1).ToArray();
        for (var i = 1; i <= a.Length; i++)
        {
            var diagonal = row[0];
            row[0] = i;
            for (var j = 1; j <= b.Length; j++)
            {
                var above = row[j];
                row[j] = Math.Min(Math.Min(row[j] + 1, row[j - 1] + 1), diagonal + (a[i - 1] == b[j - 1] ? 0 : 1));
                diagonal = above;
            }
        }

        return row[^1];
    }
}
