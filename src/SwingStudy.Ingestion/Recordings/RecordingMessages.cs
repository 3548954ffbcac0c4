using System.Globalization;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Sources;
using SwingStudy.Ingestion.Mapping;
using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Recordings;

/// <summary>All messages about recordings.</summary>
internal static class RecordingMessages
{
    public static Problem IndexColumnMissing(string file, string column, HeadingRow headings, SourceMapping mapping) => new(
        "index-column-missing", new Place(file, null, column), $"no column '{column}' among: {string.Join(", ", headings.Headings.Select(heading => heading.Name))}",
        "the column with the names of the files", $"Correct 'name' under 'index' in {mapping.File}.");

    public static Problem IndexTwice(string file, int line, string name) => new(
        "index-row-twice", new Place(file, line), $"'{name}' once more", "one row for each file", "Mend the table and put it into the inbox again.");

    public static Problem IndexMissing(string file, string index) => new(
        "index-missing", new Place(file), $"no table '{index}' beside it", "the table that tells more of it",
        $"Put '{index}' into the same folder of the inbox and run 'swingstudy ingest' again.");

    public static Problem IndexRowMissing(string file, string index) => new(
        "index-row-missing", new Place(file), $"no row for it in '{index}'", "a row with its name", $"Put the complete '{index}' into the same folder of the inbox and run 'swingstudy ingest' again.");

    public static Problem TimeFormatFault(SourceMapping mapping, string format, string fault) => MappingMessages.TimeFormatFault(mapping, format, fault);

    public static Problem TimeMissing(SourceMapping mapping, string file, int? line, FieldSource part) => new(
        "time-missing", new Place(file, line), $"no time in: {FixedTexts.PlaceName(part)}", "the time of the first sample", $"Correct {At(mapping, part.Line)}, or mend the file.");

    public static Problem TimeUnreadable(SourceMapping mapping, string file, int? line, string text, string format) => new(
        "time-unreadable", new Place(file, line), $"the time '{text}'", $"a time written {format}", $"Correct 'format' under 'time' in {mapping.File}, or mend the file.");

    public static Problem TimeAmbiguous(SourceMapping mapping, string file, IEnumerable<string> formats) => new(
        "time-ambiguous", new Place(file), $"a time that fits more than one reading: {string.Join("; ", formats)}", "one format", $"Add 'format:' under 'time' in {mapping.File}.");

    public static Problem ZoneUnstated(SourceMapping mapping, string file) => new(
        "zone-unstated", new Place(file), "a local time without a zone", "an IANA zone", $"Add 'zone:' under 'time' in {mapping.File}.");

    public static Problem TimeSkipped(string file, int? line, string zone) => new(
        "time-skipped", new Place(file, line), $"a local time that never was in {zone}, because clocks went forward over it", "a time of the zone",
        "Check the zone of the mapping and the device's clock.");

    public static Problem TimeRepeated(string file, int? line) => new(
        "time-repeated", new Place(file, line), "a local time that occurs twice, because clocks went back; nothing in the file tells which is meant", "an offset in the text, or a decision",
        "Say which is meant with 'swingstudy decide file HASH --take --times earlier' (or later).");

    public static Problem NumberUnreadable(SourceMapping mapping, string file, int? line, FieldSource field, string text, string meaning) => new(
        "number-unreadable", new Place(file, line), $"'{text}' in: {FixedTexts.PlaceName(field)}", meaning, $"Correct {At(mapping, field.Line)}, or mend the file.");

    public static Problem RateMissing(SourceMapping mapping, string file, FieldSource field) => new(
        "rate-missing", new Place(file), $"no rate in: {FixedTexts.PlaceName(field)}", "samples a second, above 0", $"Correct {At(mapping, field.Line)}, or mend the file.");

    public static Problem RateUnknown(SourceMapping mapping, string file) => new(
        "rate-unknown", new Place(file), "a single sample and no declared rate", "samples a second", $"Add 'rate:' under 'recording' in {mapping.File}, or leave the file out.");

    public static Problem HandednessUnreadable(SourceMapping mapping, string file, int? line, string text, int mappingLine) => new(
        "handedness-unreadable", new Place(file, line), $"the hand '{text}'", "right or left", $"Add its word under 'words' at {At(mapping, mappingLine)}.");

    public static Problem HandednessUnknown(SourceMapping mapping, string file, int? line, string? alias) => new(
        "handedness-unknown", new Place(file, line), alias is null ? "left and right, and nobody named" : $"left and right, and a player ('{alias}') of unknown hand",
        "which hand the player's swing is named after: it tells which side leads", $"Record the player's handedness, or add 'handedness:' under 'recording' in {mapping.File}.");

    public static Problem TrialReturns(string file, int line, string trial) => new(
        "trial-returns", new Place(file, line), $"samples of recording '{trial}' again, after others", "the samples of a recording together", "Export again in the order of recordings, or sort the lines.");

    public static Problem TrialMissing(string file, int line, string column) => new(
        "trial-missing", new Place(file, line, column), "a sample without the number of its recording", "a number in each line", "Mend the file.");

    public static Problem NoSamples(string file) => new(
        "recording-empty", new Place(file), "no samples at all", "samples below the headings", "Export it again: the export was cut off or has nothing in it.");

    public static Problem NoTriggers(string file, string column, double level) => new(
        "stream-untriggered", new Place(file, null, column), string.Create(CultureInfo.InvariantCulture, $"no rise to {level}"), "at least one trigger", "Check 'column' and 'level' of 'cut' in the mapping; leave the file out if nobody swung.");

    public static Problem NoValues(string file, int row) => new(
        "recording-without-values", new Place(file, row), "a recording in which no channel has a single value", "samples", "Check the columns and missing tokens of the mapping, or leave the file out.");

    public static Problem TooLong(string file, int line, long values) => new(
        "recording-too-long", new Place(file, line), string.Create(CultureInfo.InvariantCulture, $"more than {values} values in one recording"), "a recording of a usual length",
        "Declare how the file is divided: 'form: trials' or 'form: stream' under 'recording'.");

    public static Problem WideMissing(SourceMapping mapping, string file, IEnumerable<string> columns) => new(
        "column-missing", new Place(file), $"no recording that has all of: {string.Join(", ", columns)}", "headings that are a recording's number, a blank, and a channel's column",
        $"Correct 'channels' in {mapping.File}; declare 'layout: headings: 2' where the numbers stand in a row of their own.");

    public static Problem Clock(string file, int line, GridFault fault) => fault.Kind switch
    {
        GridFaultKind.NotRising => new("clock-not-rising", new Place(file, line), Invariant($"{fault.Expected:R} s after {fault.Found:R} s"), "rising times of samples", "Check the clock's column; sort or split the file."),
        GridFaultKind.RateDiffers => new("rate-differs", new Place(file, line), Invariant($"a clock that runs at {fault.Found:G6} samples a second"), Invariant($"the stated {fault.Expected:G6}"), "Check the clock's unit and the rate."),
        GridFaultKind.TooSparse => new("clock-gap", new Place(file, line), Invariant($"a step of {fault.Found:G6} s between samples of {fault.Expected:G6} s"), "gaps that are short against the recording", "Split the file at its gaps."),
        _ => new("clock-uneven", new Place(file, line), Invariant($"a step of {fault.Found:G6} s"), Invariant($"steps of {fault.Expected:G6} s"), "Export with evenly spaced samples."),
    };

    public static Problem ClockUnreadable(string file, int line) => new(
        "clock-unreadable", new Place(file, line), "samples whose time is missing or no number", "a time for each sample", "Check the clock's column, its unit and the rate of the mapping.");

    public static Problem SamplesLost(string file, int line, int lost, int of) => new(
        "samples-lost", new Place(file, line), Invariant($"{lost} of {of} samples are lost"), "all samples", "Nothing to do: they stay missing.");

    public static Problem ChannelEmpty(string file, int row, string channel) => new(
        "channel-empty", new Place(file, row), $"{channel} has no value", "samples", "Nothing to do when the device did not see it; else check the mapping.");

    public static Problem UnitDiffers(SourceMapping mapping, string file, string label, string found, string declared) => new(
        "unit-mismatch", new Place(file, null, label), $"the file says '{found}', the mapping says '{declared}'", "one unit", $"Remove the unit in {mapping.File} to follow the file, or correct it.");

    public static Problem UnitUnknown(SourceMapping mapping, string file, string label, string found, string canonical) => new(
        "unit-unknown", new Place(file, null, label), found.Length == 0 ? "no unit" : $"the unit '{found}'", $"a unit that converts to {canonical}", $"Add 'unit:' for it in {mapping.File}.");

    public static Problem PlatformMissing(SourceMapping mapping, string file, string plate, int number) => new(
        "platform-missing", new Place(file), $"no usable force platform {number} (for {plate})", "the platforms that the mapping names", $"Correct 'plates' in {mapping.File}; left out, no force is stored.");

    public static Problem SensorsTurned(string file, int number) => new(
        "c3d-platform-origin", new Place(file), Invariant($"an ORIGIN of force platform {number} that has its sensors above its surface"), "sensors below the surface", "Its sign is turned.");

    public static Problem LabelMissing(SourceMapping mapping, string file, string label, string use, IEnumerable<string> labels) => new(
        "label-missing", new Place(file), $"no '{label}' (for {use}) among: {string.Join(", ", labels.Take(60))}", "the labels that the mapping names", $"Correct {mapping.File}; left out, it is not stored.");

    public static Problem LabelUnmapped(SourceMapping mapping, string file, string label) => new(
        "label-unmapped", new Place(file), $"'{label}' is not mapped", "every label accounted for", $"Map it or list it under 'ignore' in {mapping.File}.");

    private static string At(SourceMapping mapping, int line) => Invariant($"{mapping.File}:{line}");

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
