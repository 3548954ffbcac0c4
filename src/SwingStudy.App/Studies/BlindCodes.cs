using System.Security.Cryptography;
using SwingStudy.Domain.Protocols;

namespace SwingStudy.App.Studies;

/// <summary>Codes under which a blind analyst sees phases, contrasts and cues: letters in an order that nothing in the protocol tells.</summary>
internal static class BlindCodes
{
    /// <summary>Letters that are not mistaken for others.</summary>
    private const string Letters = "ABCDEFGHJKLMNPQRSTUVWXYZ";

    /// <summary>Codes for the names of a masked protocol that have none yet; none for a protocol that masks nobody.</summary>
    public static IReadOnlyList<MaskedName> Missing(Protocol protocol, IReadOnlyList<MaskedName> known) => protocol.Blinding is not { AnalystIsMasked: true } ? [] :
    [
        .. Codes(MaskedName.Phase, "", protocol.Phases.Select(phase => phase.Name), known),
        .. Codes(MaskedName.Contrast, "contrast-", protocol.Contrasts.Select(contrast => contrast.Name), known),
        .. Codes(MaskedName.Cue, "cue-", protocol.Phases.Select(phase => phase.Cue).OfType<string>(), known),
    ];

    private static IEnumerable<MaskedName> Codes(string kind, string prefix, IEnumerable<string> names, IReadOnlyList<MaskedName> known)
    {
        var mine = known.Where(masked => masked.Kind == kind).ToList();
        var wanted = names.Distinct(StringComparer.Ordinal).Where(name => mine.All(masked => masked.Name != name)).ToList();
        var free = Enumerable.Range(0, 1 + ((mine.Count + wanted.Count) / Letters.Length))
            .SelectMany(round => Letters.Select(letter => prefix + new string(letter, round + 1)))
            .Where(code => mine.All(masked => masked.Code != code)).ToArray();
        RandomNumberGenerator.Shuffle<string>(free);
        return wanted.Zip(free, (name, code) => new MaskedName(kind, name, code));
    }
}
