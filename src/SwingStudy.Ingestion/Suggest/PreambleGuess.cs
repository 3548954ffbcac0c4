using System.Text.RegularExpressions;
using SwingStudy.Domain.Sources;
using SwingStudy.Domain.Units;
using SwingStudy.Ingestion.Mapping.Times;
using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Suggest;

/// <summary>Drafts what lines of the form <c>Key: value</c> above the samples say: time, player, number, rate, contact.</summary>
internal static partial class PreambleGuess
{
    private static readonly string[] RateWords = ["rate", "frequency", "abtastrate", "messrate", "samplingrate", "samplerate", "hz", "fps", "frequenz", "abtastfrequenz", "frequence", "frecuencia", "frekvens"];

    /// <summary>Fills time, participant and sequence of the draft, and gives the rule with rate and trigger.</summary>
    /// <param name="preamble">The lines.</param>
    /// <param name="rule">What is known of the recording.</param>
    /// <param name="zone">IANA zone of the study.</param>
    /// <param name="draft">The draft.</param>
    public static RecordingRule Fill(IReadOnlyList<PreambleLine> preamble, RecordingRule rule, string? zone, Draft draft)
    {
        foreach (var match in preamble.Select(line => KeyValue().Match(line.Text)).Where(match => match.Success))
        {
            var (key, value) = (match.Groups["key"].Value, match.Groups["value"].Value);
            var words = HeadingWords.Of(key);
            var start = $"^{Regex.Escape(match.Groups["lead"].Value)}{Regex.Escape(key)}{Regex.Escape(match.Groups["sign"].Value)} *";
            var field = new FieldSource { Preamble = match.Groups["sign"].Value.AsSpan().Trim().ContainsAny(";,\t") || match.Groups["sign"].Value.Contains('\t', StringComparison.Ordinal) ? start + "(?<value>[^;,\\t]+)" : start + "(?<value>.+)$" };
            if (rule.Rate is null && PlainNumber().IsMatch(value) && words.Any(RateWords.Contains))
            {
                rule = rule with { Rate = field };
                draft.Say("recording.rate", field.Preamble, 0.8, $"'{key}' is a number without a unit, taken as samples a second");
            }
            else if (Number().Match(value) is { Success: true } number && UnitCatalogue.TryParse(number.Groups["unit"].Value, out var unit))
                rule = Measured(rule, words, field with { Preamble = start + "(?<value>[-0-9.,]+)", Unit = number.Groups["unit"].Value }, unit, draft);
            else if (draft.Mapping.Time.Parts.Count == 0 && rule is { ClockKind: ClockKind.TimeOfDay, Clock: { } wall } && FormatOf($"{value} 00:00:00.0", 8) is { } dayAndClock)
                Time([field, wall], dayAndClock, zone, draft, $"{key}' and the clock '{wall.Column}");
            else if (draft.Mapping.Time.Parts.Count == 0 && FormatOf(value) is { } format)
                Time([field], format, zone, draft, key);
            else if (draft.Mapping.Participant is null && RoleWords.Likeness(words, ColumnRole.Participant) > 0.8)
                Participant(field, value, draft, key);
            else if (draft.Mapping.Sequence is null && long.TryParse(value, out _) && words.Any(word => word is "recording" or "trial" or "swing" or "shot" or "no" or "take" or "messung" or "versuch" or "aufnahme" or "essai" or "intento" or "mätning"))
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

        if (rule.Trigger is null && unit.MismatchWith(UnitCatalogue.ParseCode("s")!) is null && words.Any(word => word is "trigger" or "impact" or "contact" or "hit" or "kontakt" or "treffmoment" or "treffer" or "impacto" or "träff"))
        {
            draft.Say("recording.trigger", field.Preamble!, 0.7, "a time with the name of contact; check that it counts from the first sample");
            return rule with { Trigger = field };
        }

        return rule;
    }

    private static void Time(IReadOnlyList<FieldSource> parts, string format, string? zone, Draft draft, string key)
    {
        draft.Mapping = draft.Mapping with { Time = new TimeRule { Parts = parts, Format = format, Zone = format.StartsWith("unix", StringComparison.Ordinal) ? null : zone } };
        draft.Say("time.parts", parts[0].Preamble!, 0.8, $"'{key}' reads as a time; check that it is that of the first sample");
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

    private static string? FormatOf(string value, int fewestDigits = 10)
    {
        if (value.Count(char.IsAsciiDigit) < fewestDigits)
            return null;
        var detector = new TimeFormatDetector();
        detector.Observe(value.Trim());
        return detector.Fitting is [var format] ? format.Text : detector.Fitting is [var iso, ..] && iso.Text == "iso" ? iso.Text : null;
    }

    [GeneratedRegex(@"^(?<lead>[#%;*/""\s]*)(?<key>[^:=;,\t""]{1,40}?)(?<sign>""?\s*[:=;,\t])\s*(?<value>[^\s;,][^;\t]*?)[;,\t""\s]*$", RegexOptions.CultureInvariant)]
    private static partial Regex KeyValue();

    [GeneratedRegex(@"^-?[0-9]+([.,][0-9]+)? *(?<unit>[A-Za-zµ%°/]+)$", RegexOptions.CultureInvariant)]
    private static partial Regex Number();

    [GeneratedRegex(@"^[1-9][0-9]{1,4}([.,][0-9]+)?$", RegexOptions.CultureInvariant)]
    private static partial Regex PlainNumber();

    [GeneratedRegex(@"20\d{6}_?\d{6}", RegexOptions.CultureInvariant)]
    private static partial Regex MomentInName();
}
