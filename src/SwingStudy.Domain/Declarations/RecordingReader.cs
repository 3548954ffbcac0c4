using SwingStudy.Domain.Curves;
using SwingStudy.Domain.Declarations.Yaml;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Sources;

namespace SwingStudy.Domain.Declarations;

/// <summary>Reads the parts of a mapping that only recordings have.</summary>
internal sealed class RecordingReader(YamlMap root, FieldReader fields)
{
    private const double MetresPerMillimetre = 0.001;
    private static readonly Dictionary<string, ClockKind> ClockWords = new(StringComparer.Ordinal) { ["time-of-day"] = ClockKind.TimeOfDay, ["frames"] = ClockKind.Frames };
    private static readonly string[] Sides = ["lead", "trail", "left", "right", Curves.Channels.BothFeet];

    public RecordingRule Rule()
    {
        var map = root.OptionalMap("recording", "'recording'");
        var rule = new RecordingRule
        {
            Form = map?.OptionalChoice<RecordingForm>("form") ?? RecordingForm.Single,
            Trial = map?.OptionalMap("trial", "'trial'") is { } trial ? fields.Text(trial, hasWords: false) : null,
            Clock = Clock(map),
            ClockKind = KindOf(map),
            Rate = Number(map, "rate", "Hz"),
            Trigger = Number(map, "trigger", "s"),
            Cut = map?.OptionalMap("cut", "'cut'") is { } cut ? Cut(cut) : null,
            Purposes = map is null ? [] : [.. map.Maps("purposes", "the purpose", "purpose").Select(Purpose)],
            Loads = map?.OptionalChoice<LoadDirection>("loads") ?? LoadDirection.OnPlayer,
            Handedness = map?.OptionalMap("handedness", "'handedness'") is { } hand ? fields.Text(hand, hasWords: true) : null,
            Axes = map?.OptionalMap("axes", "'axes'") is { } axes ? Axes(axes) : AxisMap.Same,
            LandmarkColumns = map?.OptionalText("landmark_columns") ?? RecordingRule.DefaultLandmarkColumns,
            LandmarkUnit = map is null ? null : UnitReader.Read(map, "landmark_unit", "landmarks", "m")?.Code,
            Channels = Channels(),
            Landmarks = Landmarks(),
            Events = root.Pairs("events"),
        };
        map?.Done();
        return rule;
    }

    public IReadOnlyDictionary<string, PlateGeometry> Plates()
    {
        var plates = new Dictionary<string, PlateGeometry>(StringComparer.Ordinal);
        if (root.OptionalMap("plates", "'plates'") is not { } map)
            return plates;
        foreach (var side in map.Keys)
        {
            if (!Sides.Contains(side))
                map.Note(Messages.WordUnknown(map.PlaceOf(side), "plates", side, Sides));
            if (map.OptionalMap(side, $"plate '{side}'") is { } plate)
                plates[side] = Plate(plate);
        }

        return plates;
    }

    public IndexTable? Index()
    {
        if (root.OptionalMap("index", "'index'") is not { } map)
            return null;
        var index = new IndexTable(map.Text("file", "the name of the table"), map.Text("name", "the column with the names of files"), MappingParts.Text(map));
        map.Done();
        return index;
    }

    /// <summary>What the parts must have of each other.</summary>
    public void Check(SourceMapping mapping)
    {
        var rule = mapping.Recording!;
        if (rule.Channels.Count == 0 && rule.Landmarks.Count == 0 && mapping.Plates.Values.All(plate => plate.Platform is null))
            root.Note(DeclarationMessages.NeededWith(root.PlaceOf("rows"), "the mapping", "channels", "channels, landmarks or platforms, because rows are recordings"));
        if ((rule.Form == RecordingForm.Trials) != (rule.Trial is not null))
            root.Note(DeclarationMessages.OnlyWith(root.PlaceOf("recording"), "trial", "exactly with 'form: trials'"));
        if ((rule.Form == RecordingForm.Stream) != (rule.Cut is not null))
            root.Note(DeclarationMessages.OnlyWith(root.PlaceOf("recording"), "cut", "exactly with 'form: stream'"));
        if (mapping.Reader == ReaderKind.C3d && (rule.Form != RecordingForm.Single || rule.Clock is not null || rule.Rate is not null))
            root.Note(DeclarationMessages.OnlyWith(root.PlaceOf("recording"), "form, clock or rate", "only without 'reader: c3d', which says them itself"));
        if (rule.ClockKind == ClockKind.Frames && rule.Rate is null)
            root.Note(DeclarationMessages.NeededWith(root.PlaceOf("recording"), "'recording'", "rate", "a rate, because the clock counts frames"));
        if (mapping.Reader != ReaderKind.C3d && rule.Clock is null && rule.Rate is null)
            root.Note(DeclarationMessages.NeededWith(root.PlaceOf("recording"), "'recording'", "rate", "a rate, or a clock column that tells it"));
        if (mapping.Reader != ReaderKind.C3d && (rule.Events.Count > 0 || mapping.Plates.Values.Any(plate => plate.Platform is not null)))
            root.Note(DeclarationMessages.OnlyWith(root.PlaceOf("events"), "events or platform", "only with 'reader: c3d'"));
        if (mapping.Practice.Count > 0 || mapping.LongForm is not null)
            root.Note(DeclarationMessages.OnlyWith(root.PlaceOf("practice"), "practice or long", "only where a row is a swing, a moment or a session"));
    }

    private FieldSource? Clock(YamlMap? map) => map?.OptionalMap("clock", "'clock'") is { } field
        ? fields.Number(field, "clock", "s", hasUnit: !ClockWords.ContainsKey(field.OptionalText("unit") ?? ""))
        : null;

    private static ClockKind KindOf(YamlMap? map) =>
        map?.OptionalMap("clock", "'clock'")?.OptionalText("unit") is { } unit && ClockWords.TryGetValue(unit, out var kind) ? kind : ClockKind.Time;

    private FieldSource? Number(YamlMap? map, string key, string unit) =>
        map?.OptionalMap(key, $"'{key}'") is { } field ? fields.Number(field, key, unit) : null;

    private static StreamCut Cut(YamlMap map)
    {
        var cut = new StreamCut(
            map.Text("column", "the column whose values trigger"),
            map.Number("level", "the value to which it rises"),
            map.Number("from_s", "seconds from the trigger, negative before"),
            map.Number("to_s", "seconds from the trigger"));
        map.Done();
        if (!(cut.FromSeconds <= 0 && cut.ToSeconds > 0))
            map.Note(new Problem("range-order", map.PlaceOf("from_s"), "'cut' does not reach around its trigger", "from_s not above 0, to_s above 0", "Correct the two."));
        return cut;
    }

    private static PurposeRule Purpose(YamlMap map)
    {
        var rule = new PurposeRule(
            map.Choice<RecordingPurpose>("purpose", "zero, quiet or swing"), map.OptionalText("file"), map.OptionalText("preamble"), map.OptionalNumber("shorter_than_s"));
        map.Done();
        foreach (var (key, pattern) in ((string, string?)[])[("file", rule.File), ("preamble", rule.Preamble)])
        {
            if (pattern is not null && Patterns.Fault(pattern) is { } fault)
                map.Note(DeclarationMessages.PatternInvalid(map.PlaceOf(key), key, pattern, fault));
        }

        if (rule is { File: null, Preamble: null, ShorterThanSeconds: null })
            map.Note(DeclarationMessages.NeededWith(map.PlaceOf("file"), map.Subject, "file", "at least one of file, preamble, shorter_than_s"));
        return rule;
    }

    private static AxisMap Axes(YamlMap map)
    {
        var (x, y, z) = (map.Text("x", "the device's axis to the target"), map.Text("y", "the device's axis upward"), map.Text("z", "the device's axis to the right, facing the target"));
        map.Done();
        if (AxisMap.Of(x, y, z) is { } axes)
            return axes;
        map.Note(new Problem("axes-invalid", map.PlaceOf("x"), $"x: {x}, y: {y}, z: {z}", "x, y and z of the device, each once, with a minus where it points the other way",
            "For a device with z up and x to the target write { x: x, y: z, z: -y }."));
        return AxisMap.Same;
    }

    private static PlateGeometry Plate(YamlMap map)
    {
        var centre = Lengths(map, "centre_mm", 3);
        var size = Lengths(map, "size_mm", 2);
        var origin = Lengths(map, "origin_mm", 2);
        var plate = new PlateGeometry
        {
            CentreXM = centre is null ? double.NaN : centre[0],
            CentreYM = centre is null ? 0 : centre[1],
            CentreZM = centre is null ? double.NaN : centre[2],
            SizeXM = size is null ? double.NaN : size[0],
            SizeZM = size is null ? double.NaN : size[1],
            DepthM = MetresPerMillimetre * (map.OptionalNumber("depth_mm") ?? 0),
            OriginXM = origin is null ? 0 : origin[0],
            OriginZM = origin is null ? 0 : origin[1],
            MatM = MetresPerMillimetre * (map.OptionalNumber("mat_mm") ?? 0),
            TurnDeg = map.OptionalNumber("turn_deg") ?? 0,
            Platform = map.OptionalCount("platform", 1),
        };
        map.Done();
        return plate;
    }

    private static double[]? Lengths(YamlMap map, string key, int count)
    {
        if (map.OptionalNumbers(key) is not { } millimetres)
            return null;
        if (millimetres.Count == count)
            return [.. millimetres.Select(length => length * MetresPerMillimetre)];
        map.Note(Messages.OutOfRange(map.PlaceOf(key), key, millimetres.Count, count == 3 ? "three numbers: to the target, up, to the right" : "two numbers: along and across the target line"));
        return null;
    }

    private Dictionary<string, FieldSource> Channels()
    {
        var channels = new Dictionary<string, FieldSource>(StringComparer.Ordinal);
        if (root.OptionalMap("channels", "'channels'") is not { } map)
            return channels;
        foreach (var name in map.Keys)
        {
            if (Curves.Channels.FindInput(PlayerSides.Of(name, true)) is not { } channel)
                map.Note(DeclarationMessages.ChannelUnknown(map.PlaceOf(name), name, Curves.Channels.Names));
            else if (map.OptionalMap(name, $"'{name}'") is { } field)
                channels[name] = fields.Number(field, name, channel.Unit);
        }

        return channels;
    }

    private IReadOnlyDictionary<string, string> Landmarks()
    {
        var landmarks = root.Pairs("landmarks");
        foreach (var name in landmarks.Keys.Where(name => Curves.Channels.Landmarks.All(landmark => landmark.Name != PlayerSides.Of(name, true))))
            root.Note(DeclarationMessages.ChannelUnknown(root.PlaceOf("landmarks"), name, Curves.Channels.Landmarks.Select(landmark => landmark.Name)));
        return landmarks;
    }
}
