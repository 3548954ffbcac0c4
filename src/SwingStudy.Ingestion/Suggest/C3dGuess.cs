using SwingStudy.Domain.Curves;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Sources;
using SwingStudy.Ingestion.Readers.C3d;
using SwingStudy.Ingestion.Recordings;

namespace SwingStudy.Ingestion.Suggest;

/// <summary>Drafts a mapping for a C3D file from its labels, units, platforms and events.</summary>
internal static class C3dGuess
{
    /// <summary>Whether a file begins as C3D does; text and workbooks never do.</summary>
    public static bool Fits(ReadOnlySpan<byte> start) => start.Length > 1 && start[1] == 0x50 && start[0] is >= 2 and < 0x20;

    /// <summary>Fills the draft, or tells why the file cannot be read.</summary>
    public static IReadOnlyList<Problem> Fill(Stream stream, string path, string? zone, Draft draft)
    {
        if (!C3dFile.Open(stream, path).Succeeded(out var file, out var problems))
            return problems;
        draft.Say("rows", "recordings", 0.98, "a C3D file is a recording");
        draft.Say("reader", "c3d", 1, "the file is C3D");
        draft.Mapping = draft.Mapping with { Rows = RowMeaning.Recordings, Reader = ReaderKind.C3d };
        PreambleGuess.FromName(path, zone, draft);
        if (C3dPreamble.Of(file.Parameters).Any(line => line.Text.StartsWith("SUBJECTS:NAMES: ", StringComparison.OrdinalIgnoreCase)))
        {
            draft.Mapping = draft.Mapping with { Participant = new FieldSource { Preamble = "^SUBJECTS:NAMES: (?<value>.+)$" } };
            draft.Say("participant", "SUBJECTS:NAMES", 0.7, "the file names its subject");
        }

        var rule = LandmarkGuess.Of(file.PointLabels, new RecordingRule { Events = Events(file, draft), Channels = Analog(file, draft) }, draft);
        var plates = new Dictionary<string, PlateGeometry>(StringComparer.Ordinal);
        string[] feet = file.Platforms.Count == 1 ? [Domain.Curves.Channels.BothFeet] : ["trail", "lead"];
        foreach (var (side, platform) in feet.Zip(file.Platforms))
        {
            plates[side] = new PlateGeometry { Platform = platform.Number };
            draft.Say($"plates.{side}", $"platform {platform.Number}", 0.2, feet.Length == 1
                ? "a guess: one plate, so both feet are taken to stand on it"
                : "a guess: nothing says which foot stands on which plate");
        }

        var used = rule.Landmarks.Values.Concat(rule.Channels.Values.Select(field => field.Column!)).Concat(rule.Events.Values)
            .Concat(file.Platforms.SelectMany(platform => platform.Channels.Select(channel => file.AnalogLabels[channel]))).ToHashSet(StringComparer.OrdinalIgnoreCase);
        string[] ignored = [.. file.PointLabels.Concat(file.AnalogLabels).Concat(file.Events.Select(found => found.Label)).Where(label => !used.Contains(label)).Distinct(StringComparer.OrdinalIgnoreCase)];
        foreach (var label in ignored)
            draft.Say($"ignore.{label}", label, 0.4, "no landmark, channel or event is known for it");
        draft.Mapping = draft.Mapping with { Recording = rule, Plates = plates, Ignore = ignored };
        file.Dispose();
        return [];
    }

    private static Dictionary<string, string> Events(C3dFile file, Draft draft)
    {
        var events = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var label in file.Events.Select(found => found.Label).Where(label => label.Length > 0).Distinct(StringComparer.OrdinalIgnoreCase))
        {
            var words = HeadingWords.Of(label);
            var name = words.Any(word => word is "impact" or "contact" or "hit" or "strike" or "ball") ? RecordingRule.Impact
                : words.Any(word => word is "takeaway" or "start" or "onset") ? "takeaway"
                : words.Any(word => word is "top") ? "top"
                : null;
            if (name is not null && events.TryAdd(name, label))
                draft.Say($"events.{name}", label, 0.8, "by its name");
        }

        return events;
    }

    private static Dictionary<string, FieldSource> Analog(C3dFile file, Draft draft)
    {
        var channels = new Dictionary<string, FieldSource>(StringComparer.Ordinal);
        for (var i = 0; i < file.AnalogLabels.Count; i++)
        {
            if (!HeadingWords.Of(file.AnalogLabels[i]).Any(word => word is "sound" or "mic" or "microphone" or "audio" or "click") || channels.ContainsKey(Channels.Sound))
                continue;
            channels[Channels.Sound] = new FieldSource { Column = file.AnalogLabels[i], Unit = file.AnalogUnits[i].Length == 0 ? "V" : null };
            draft.Say($"channels.{Channels.Sound}", file.AnalogLabels[i], 0.8, "by its name");
        }

        return channels;
    }
}
