using System.Globalization;
using NodaTime;
using SwingStudy.Domain.Curves;
using SwingStudy.Domain.Declarations;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Sources;
using SwingStudy.Domain.Units;
using SwingStudy.Ingestion.Mapping;
using SwingStudy.Ingestion.Mapping.Cells;
using SwingStudy.Ingestion.Mapping.Times;
using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Recordings;

/// <summary>Makes time, player, contact, hand and purpose of what is written about a recording.</summary>
/// <param name="request">The file.</param>
/// <param name="decimalSign">Decimal sign of its texts.</param>
/// <param name="preamble">Its preamble.</param>
internal sealed class RecordingFacts(RecordingRequest request, char decimalSign, IReadOnlyList<PreambleLine> preamble)
{
    private readonly SourceMapping _mapping = request.Mapping;
    private readonly RecordingRule _rule = request.Mapping.Recording!;
    private readonly DateTimeZone? _zone = request.Mapping.Time.Zone is { } zone
        ? ZoneNames.Find(zone) ?? throw new InvalidOperationException($"The zone '{zone}' of {request.Mapping.File} was not checked.")
        : null;

    /// <summary>Whether left and right stand in the mapping, so that handedness matters.</summary>
    public bool NeedsHandedness { get; } = request.Mapping.Recording!.Channels.Keys.Concat(request.Mapping.Recording.Landmarks.Keys).Concat(request.Mapping.Plates.Keys)
        .Any(PlayerSides.NeedsHandedness);

    /// <summary>Time of the first sample in milliseconds since 1970 UTC.</summary>
    public Outcome<long> Start(RecordingTexts texts)
    {
        var missing = new MissingTokens(_mapping.Missing, _mapping.Time.Parts.SelectMany(part => part.Missing));
        for (var i = 0; i < texts.Time.Count; i++)
        {
            if (texts.Time[i] is not { } part || missing.Hold(part.AsSpan().Trim()))
                return RecordingMessages.TimeMissing(_mapping, request.File, texts.Line, _mapping.Time.Parts[i]);
        }

        var text = string.Join(' ', texts.Time.Select(part => part!.Trim()));
        if (!FormatOf(text).Succeeded(out var format, out var problems))
            return Outcome<long>.Failed(problems);
        long millis;
        var isUtc = false;
        if (!(format.AddsParts ? TrySerial(texts.Time, out millis) : format.TryRead(text, out millis, out isUtc)))
            return RecordingMessages.TimeUnreadable(_mapping, request.File, texts.Line, text, format.Text);
        return isUtc ? millis : FromLocal(millis, texts.Line);
    }

    /// <summary>The name or code of the player; null for nobody.</summary>
    public string? Alias(RecordingTexts texts) => Present(_mapping.Participant, texts.Participant);

    /// <summary>The device's number, else that of the recording in its file; null where there is none or it is none.</summary>
    public long? Sequence(RecordingTexts texts) =>
        (_mapping.Sequence is null ? texts.Sequence : Present(_mapping.Sequence, texts.Sequence)) is { } text && long.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number) ? number : null;

    /// <summary>Contact in seconds from the first sample; null where the device does not say.</summary>
    public Outcome<double> Trigger(RecordingTexts texts)
    {
        if (_rule.Trigger is not { } field || Present(field, texts.Trigger) is not { } text)
            return double.NaN;
        return Number(field, text, "s") is { } seconds ? seconds : RecordingMessages.NumberUnreadable(_mapping, request.File, texts.Line, field, text, "seconds from the first sample");
    }

    /// <summary>The declared rate in hertz; NaN where none is, or its text is no number.</summary>
    public double RateHz(FixedTexts texts) => _rule.Rate is { } field && texts.Of(field) is { } text && Number(field, text, "Hz") is { } rate ? rate : double.NaN;

    /// <summary>A number in a canonical unit; null when the text is none.</summary>
    public double? Number(FieldSource field, string text, string canonical)
    {
        var unit = UnitCatalogue.Parse(field.Unit ?? canonical)!;
        var conversion = UnitConversion.Between(unit, UnitCatalogue.Parse(canonical)!) ?? throw new InvalidOperationException($"The unit of line {field.Line} of {_mapping.File} was not checked.");
        var scale = LinearScale.Of(field.Scale, field.Offset, field.Negate, conversion.Factor, conversion.Offset);
        return new NumberText(field.Decimal ?? decimalSign, _mapping.Text.Thousands).TryRead(text.AsSpan().Trim(), out var value) ? scale.Apply(value) : null;
    }

    /// <summary>Whether the player swings right-handed; true where it does not matter.</summary>
    public Outcome<bool> IsRightHanded(RecordingTexts texts)
    {
        if (!NeedsHandedness)
            return true;
        if (_rule.Handedness is { } field && Present(field, texts.Handedness) is { } text)
        {
            var word = new WordList(field.Words).TryGet(text, out var meant) ? meant : text;
            if (word.Equals("right", StringComparison.OrdinalIgnoreCase) || word.Equals("left", StringComparison.OrdinalIgnoreCase))
                return word.Equals("right", StringComparison.OrdinalIgnoreCase);
            return RecordingMessages.HandednessUnreadable(_mapping, request.File, texts.Line, text, field.Line);
        }

        return Alias(texts) is { } alias && request.IsRightHanded(alias) is { } known
            ? known
            : RecordingMessages.HandednessUnknown(_mapping, request.File, texts.Line, Alias(texts));
    }

    /// <summary>What a recording is for.</summary>
    public RecordingPurpose Purpose(double lengthSeconds)
    {
        foreach (var rule in _rule.Purposes)
        {
            if ((rule.File is null || Patterns.Compile(rule.File).IsMatch(request.Name))
                && (rule.Preamble is null || preamble.Any(line => Patterns.Compile(rule.Preamble).IsMatch(line.Text)))
                && (rule.ShorterThanSeconds is not { } limit || lengthSeconds < limit))
                return rule.Purpose;
        }

        return RecordingPurpose.Swing;
    }

    private string? Present(FieldSource? field, string? text) =>
        field is null || text is null || new MissingTokens(_mapping.Missing, field.Missing).Hold(CellText.Trim(text)) ? null : CellText.Trim(text).ToString();

    private Outcome<TimeFormat> FormatOf(string text)
    {
        if (_mapping.Time.Format is { } declared)
            return TimeFormat.TryCompile(declared, out var format, out var fault) ? format : RecordingMessages.TimeFormatFault(_mapping, declared, fault);
        var detector = new TimeFormatDetector();
        detector.Observe(text);
        return detector.Fitting.Count switch
        {
            1 => detector.Fitting[0],
            0 => RecordingMessages.TimeUnreadable(_mapping, request.File, null, text, "a known format"),
            _ => RecordingMessages.TimeAmbiguous(_mapping, request.File, detector.Fitting.Select(format => format.Text)),
        };
    }

    private static bool TrySerial(IReadOnlyList<string?> parts, out long millis)
    {
        millis = 0;
        var days = 0.0;
        foreach (var part in parts)
        {
            if (!TimeFormat.TrySerial(part!.Trim(), out var number))
                return false;
            days += number;
        }

        return ExcelSerial.TryToLocalMillis(days, out millis);
    }

    private Outcome<long> FromLocal(long millis, int? line)
    {
        if (_zone is null)
            return RecordingMessages.ZoneUnstated(_mapping, request.File);
        Span<long> times = [millis];
        var resolved = new ZoneClock(_zone).Resolve(times, [], request.Times);
        if (resolved.Skipped.Count > 0)
            return RecordingMessages.TimeSkipped(request.File, line, _mapping.Time.Zone!);
        return resolved.IsOpen ? RecordingMessages.TimeRepeated(request.File, line) : times[0];
    }
}
