using System.Text.RegularExpressions;
using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Suggest;

/// <summary>Recognises channels of plates and landmarks by the short forms that exports use.</summary>
internal static partial class ChannelWords
{
    private static readonly Dictionary<string, string> Sides = new(StringComparer.Ordinal)
    {
        ["lead"] = "lead", ["front"] = "lead", ["trail"] = "trail", ["rear"] = "trail", ["t"] = "trail", ["left"] = "left", ["lft"] = "left", ["links"] = "left", ["gauche"] = "left",
        ["right"] = "right", ["rgt"] = "right", ["r"] = "right", ["rechts"] = "right", ["droite"] = "right", ["l"] = "l", ["1"] = "1", ["2"] = "2",
    };

    private static readonly (string Joint, string[] Words)[] Joints =
    [
        ("wrist", ["wr", "wri", "wrist", "handgelenk"]), ("elbow", ["el", "elb", "elbow", "ellbogen"]), ("shoulder", ["sh", "sho", "shoulder", "acr", "schulter"]),
        ("hip", ["hp", "hip", "hjc", "hüfte"]), ("knee", ["kn", "kne", "knee", "knie"]), ("ankle", ["an", "ank", "ankle", "mal", "knöchel"]), ("pelvis_front", ["asi", "asis"]),
    ];

    private static readonly (string Landmark, string[] Words)[] Points =
    [
        ("club_head", ["head", "clubhead", "clubface", "face", "schlägerkopf"]), ("shaft", ["shaft", "schaft"]), ("grip", ["grip", "butt", "hands", "griff"]),
        ("pelvis_back", ["sacr", "sacrum", "sac", "psis"]),
    ];

    /// <summary>Side, quantity and axis of a heading such as <c>T.Fx</c>, <c>Left Force Z (N)</c> or <c>Fz2</c>; null for other headings.</summary>
    public static (string? Side, string Quantity, char Axis)? Load(string heading)
    {
        string? side = null, quantity = null;
        var axis = '\0';
        foreach (var word in Words(HeadingText.SplitUnit(HeadingText.Clean(heading)).Bare))
        {
            if (Short().Match(word) is { Success: true } match)
            {
                quantity = match.Groups["quantity"].Value is "f" ? "force" : "moment";
                axis = match.Groups["axis"].Value[0];
                side = match.Groups["plate"].Success ? match.Groups["plate"].Value : side;
            }
            else if (Pressure().Match(word) is { Success: true } place)
            {
                quantity = "cop";
                axis = place.Groups["axis"].Success ? place.Groups["axis"].Value[0] : axis;
            }
            else if (word is "force" or "grf" or "kraft" or "fuerza")
            {
                quantity = "force";
            }
            else if (word is "moment" or "torque" or "momento")
            {
                quantity = "moment";
            }
            else if (word is "x" or "y" or "z")
            {
                axis = word[0];
            }
            else
            {
                side = Sides.GetValueOrDefault(word) ?? (Plate().Match(word) is { Success: true } plate ? plate.Groups["plate"].Value : side);
            }
        }

        return quantity is null || axis == '\0' ? null : (side, quantity, axis);
    }

    /// <summary>Landmark of a label such as <c>L_WR</c>, <c>RKNE</c> or <c>Club head</c>, with <c>l</c> where the side may be lead or left; null for other labels.</summary>
    public static string? Landmark(string label)
    {
        var words = Words(label[(label.LastIndexOf(':') + 1)..]);
        foreach (var (landmark, names) in Points)
        {
            if (words.Any(names.Contains))
                return landmark;
        }

        var (side, joint) = (words.Select(word => Sides.GetValueOrDefault(word)).FirstOrDefault(found => found is not null), JointOf(words));
        if (joint is null && words is [{ Length: > 2 } one])
            (side, joint) = (Sides.GetValueOrDefault(one[..1]), JointOf([one[1..]]));
        return side is null || joint is null ? null : joint == "pelvis_front" ? $"pelvis_front_{side}" : $"{side}_{joint}";
    }

    private static string? JointOf(IReadOnlyList<string> words) => Joints.FirstOrDefault(joint => words.Any(joint.Words.Contains)).Joint;

    private static string[] Words(string text) => [.. Parts().Matches(text).Select(match => match.Value.ToLowerInvariant())];

    [GeneratedRegex(@"[\p{L}\p{N}]+", RegexOptions.CultureInvariant)]
    private static partial Regex Parts();

    [GeneratedRegex(@"^(?<quantity>[fm])(?<axis>[xyz])(?<plate>[12])?$", RegexOptions.CultureInvariant)]
    private static partial Regex Short();

    [GeneratedRegex(@"^cop(?<axis>[xyz])?$", RegexOptions.CultureInvariant)]
    private static partial Regex Pressure();

    [GeneratedRegex(@"^(?:fp|plate|p)(?<plate>[12])$", RegexOptions.CultureInvariant)]
    private static partial Regex Plate();
}
