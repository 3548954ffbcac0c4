using System.Text.RegularExpressions;
using SwingStudy.Domain.Sources;
using SwingStudy.Domain.Units;
using SwingStudy.Ingestion.Mapping.Times;
using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Suggest;

/// <summary>Drafts what lines of the form <c>Key: value</c> above the samples say: time, player, number, rate, contact.</summary>
internal static partial class PreambleGuess
{
    /// <summary>Fills time, participant and sequence of the draft, and gives the rule with rate and trigger.</summary>
    public static RecordingRule Fill(IReadOnlyList<PreambleLine> preamble, RecordingRule rule, string? zone, Draft draft)
    {
        foreach (var match in preamble.Select(line => KeyValue().Match(line.Text)).Where(match => match.Success))
        {
            var (key, value) = (match.Groups["key"].Value, match.Groups["value"].Value);
            var words = HeadingWords.Of(key);
            var field = new FieldSource { Preamble = $"^{Regex.Escape(key)}{Regex.Escape(match.Groups["sign"].Value)} *(?<value>.+)$" };
            if (Number().Match(value) is { Success: true } number && UnitCatalogue.TryParse(number.Groups["unit"].Value, out var unit))
                rule = Measured(rule, words, field with { Preamble = $"^{Regex.Escape(key)}{Regex.Escape(match.Groups["sign"].Value)} *(?<value>[-0-9.,]+)", Unit = number.Groups["unit"].Value }, unit, draft);
            else if (draft.Mapping.Time.Parts.Count == 0 && FormatOf(value) is { } format)
                Time(field, format, zone, draft, key);
            else if (draft.Mapping.Participant is null && RoleWords.Likeness(words, ColumnRole.Participant) > 0.8)
                Participant(field, value, draft, key);
            else if (draft.Mapping.Sequence is null && long.TryParse(value, out _) && words.Any(word => word is "recording" or "trial" or "swing" or "shot" or "no" or "take"))
                Sequence(field, draft, key);
        }

        if (draft.Mapping.Time.Parts.Count == 0)
            draft.Say("time.parts", "", 0, "no line above the samples is a time: name the place by hand");
        if (draft.Mapping.Participant is null)
            draft.Say("participant", "", 0, "no line names the player: recordings of nobody are linked by their clocks alone");
        if (rule is { Clock: null, Rate: null })
            draft.Say("recording.rate", "", 0, "neither a clock nor a rate was found: declare 'rate' under 'recording'");
        return rule;
    }

    /// <summary>Time of a file from a date and a time of day in its name.</summary>
    public static void FromName(string path, string? zone, Draft draft)
    {
        if (MomentInName().Match(Path.GetFileName(path)) is not { Success: true })
        {
            draft.Say("time.parts", "", 0, "neither the file nor its name holds a time: name the place by hand, or a table beside the files under 'index'");
            return;
        }

        var files = $@".*?(?<day>20\d{{6}})_?(?<clock>\d{{6}}).*\{Path.GetExtension(path)}";
        draft.Mapping = draft.Mapping with
        {
            Files = files,
            Time = new TimeRule { Parts = [new FieldSource { FileGroup = "day" }, new FieldSource { FileGroup = "clock" }], Format = "yyyyMMdd HHmmss", Zone = zone },
        };
        draft.Say("files", files, 0.7, "the name holds a date and a time");
        draft.Say("time.parts", "date and time of the name", 0.6, "to whole seconds; a table beside the files may say more");
        draft.Say("time.zone", zone ?? "", zone is null ? 0 : 0.7, zone is null ? "declare the IANA zone" : "the zone of the study");
    }

    private static RecordingRule Measured(RecordingRule rule, string[] words, FieldSource field, Unit unit, Draft draft)
    {
        if (rule.Rate is null && unit.MismatchWith(UnitCatalogue.ParseCode("Hz")!) is null)
        {
            draft.Say("recording.rate", field.Preamble!, 0.9, "a number with a unit of frequency");
            return rule with { Rate = field };
        }

        if (rule.Trigger is null && unit.MismatchWith(UnitCatalogue.ParseCode("s")!) is null && words.Any(word => word is "trigger" or "impact" or "contact" or "hit"))
        {
            draft.Say("recording.trigger", field.Preamble!, 0.7, "a time with the name of contact; check that it counts from the first sample");
            return rule with { Trigger = field };
        }

        return rule;
    }

    private static void Time(FieldSource field, string format, string? zone, Draft draft, string key)
    {
        draft.Mapping = draft.Mapping with { Time = new TimeRule { Parts = [field], Format = format, Zone = format.StartsWith("unix", StringComparison.Ordinal) ? null : zone } };
        draft.Say("time.parts", field.Preamble!, 0.8, $"'{key}' reads as a time; check that it is that of the first sample");
        draft.Say("time.format", format, 0.8, "the one format that fits");
        draft.Say("time.zone", zone ?? "", zone is null ? 0 : 0.7, zone is null ? "declare the IANA zone" : "the zone of the study");
    }

    private static void Participant(FieldSource field, string value, Draft draft, string key)
    {
        draft.Mapping = draft.Mapping with { Participant = field with { Missing = RoleWords.IsMissing(value) ? [value.Trim()] : ["-"] } };
        draft.Say("participant", field.Preamble!, 0.85, $"'{key}' names the player");
    }

    private static void Sequence(FieldSource field, Draft draft, string key)
    {
        draft.Mapping = draft.Mapping with { Sequence = field };
        draft.Say("sequence", field.Preamble!, 0.8, $"'{key}' numbers the recordings");
    }

    private static string? FormatOf(string value)
    {
        if (value.Count(char.IsAsciiDigit) < 10)
            return null;
        var detector = new TimeFormatDetector();
        detector.Observe(value.Trim());
        return detector.Fitting is [var format] ? format.Text : null;
    }

    [GeneratedRegex(@"^(?<key>[^:=;\t]{1,40}?)(?<sign>\s*[:=])\s*(?<value>\S.*)$", RegexOptions.CultureInvariant)]
    private static partial Regex KeyValue();

    [GeneratedRegex(@"^-?[0-9]+([.,][0-9]+)? *(?<unit>[A-Za-zµ%°/]+)$", RegexOptions.CultureInvariant)]
    private static partial Regex Number();

    [GeneratedRegex(@"20\d{6}_?\d{6}", RegexOptions.CultureInvariant)]
    private static partial Regex MomentInName();
}
