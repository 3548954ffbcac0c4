using System.Text.RegularExpressions;
using SwingStudy.Domain.Curves;
using SwingStudy.Domain.Sources;
using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Suggest;

/// <summary>Drafts landmarks from labels of markers.</summary>
internal static partial class LandmarkGuess
{
    /// <summary>Whether a heading is a coordinate of something: <c>L_WR x</c>, <c>Grip.Y (mm)</c>.</summary>
    public static bool IsCoordinate(string heading) => Coordinate().IsMatch(HeadingText.SplitUnit(HeadingText.Clean(heading)).Bare) && ChannelWords.Load(heading) is null;

    /// <summary>Whether the landmarks of a rule use a column.</summary>
    public static bool Uses(RecordingRule rule, string column)
    {
        var bare = HeadingText.SplitUnit(column).Bare;
        return rule.Landmarks.Values.Any(label => "xyz".Any(axis =>
            bare.Equals(rule.LandmarkColumns.Replace("{label}", label, StringComparison.Ordinal).Replace("{axis}", axis.ToString(), StringComparison.Ordinal), StringComparison.OrdinalIgnoreCase)));
    }

    /// <summary>Landmarks of the columns of a text.</summary>
    public static RecordingRule OfColumns(IReadOnlyList<ColumnProfile> columns, RecordingRule rule, Draft draft)
    {
        var matches = columns.Select(column => (column.Heading, Match: Coordinate().Match(HeadingText.SplitUnit(column.Heading.Text).Bare))).Where(pair => pair.Match.Success).ToList();
        if (matches.Count == 0)
            return rule;
        var sign = matches[0].Match.Groups["sign"].Value;
        var unit = UnitBySize(columns.Where(column => matches.Exists(match => match.Heading == column.Heading)));
        rule = rule with { LandmarkColumns = "{label}" + sign + "{axis}", LandmarkUnit = matches[0].Heading.Unit is null ? unit : null };
        if (rule.LandmarkUnit is not null)
            draft.Say("recording.landmark_unit", unit, 0.5, "the file names no unit; by the size of the numbers, for points within a few metres");
        return Of([.. matches.Select(pair => pair.Match.Groups["label"].Value).Distinct(StringComparer.OrdinalIgnoreCase)], rule, draft);
    }

    /// <summary>Landmarks of labels; axes are a guess that vertical is z.</summary>
    public static RecordingRule Of(IReadOnlyList<string> labels, RecordingRule rule, Draft draft)
    {
        var raw = labels.Select(label => (Label: label, Name: ChannelWords.Landmark(label))).Where(pair => pair.Name is not null).ToList();
        var sides = raw.SelectMany(pair => pair.Name!.Split('_')).Where(word => word is "l" or "lead" or "trail" or "left" or "right").Distinct().ToList();
        var (meaning, confidence, reason) = SideGuess.Of(sides);
        var landmarks = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var (label, name) in raw)
        {
            var found = string.Join('_', name!.Split('_').Select(word => meaning.GetValueOrDefault(word, word)));
            if (Channels.Landmarks.Any(landmark => landmark.Name == PlayerSides.Of(found, true)) && landmarks.TryAdd(found, label))
                Say(draft, found, label, confidence, reason);
        }

        draft.Say("recording.axes", "x, z, -y", 0.3, "a guess: x to the target and z up");
        return rule with { Landmarks = landmarks, Axes = AxisMap.Of("x", "z", "-y")! };
    }

    /// <summary>Points of a player and a club lie between a hand's breadth and a few metres from where coordinates count.</summary>
    private static string UnitBySize(IEnumerable<ColumnProfile> columns)
    {
        var largest = columns.Select(column => column.Sorted() is { Length: > 0 } sorted ? Math.Max(Math.Abs(sorted[0]), Math.Abs(sorted[^1])) : 0).DefaultIfEmpty(0).Max();
        return largest < 12 ? "m" : largest < 600 ? "cm" : "mm";
    }

    private static void Say(Draft draft, string landmark, string label, double confidence, string reason)
    {
        if (landmark is "club_head" or "shaft" or "grip" or "pelvis_back")
            draft.Say($"landmarks.{landmark}", label, 0.6, "by its name");
        else
            draft.Say($"landmarks.{landmark}", label, Math.Min(confidence, 0.7), reason);
    }

    [GeneratedRegex(@"^(?<label>.*[\p{L}\p{N}])(?<sign>[ ._:\-])(?<axis>[xyzXYZ])$", RegexOptions.CultureInvariant)]
    private static partial Regex Coordinate();
}
