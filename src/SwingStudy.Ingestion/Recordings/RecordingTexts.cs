using SwingStudy.Domain.Sources;

namespace SwingStudy.Ingestion.Recordings;

/// <summary>What is written about a recording beside its samples, before anything is made of it; null where nothing stands.</summary>
/// <param name="Time">Parts of its time.</param>
/// <param name="Participant">The player.</param>
/// <param name="Sequence">Number of the device.</param>
/// <param name="Trigger">Contact from the first sample.</param>
/// <param name="Handedness">The player's hand.</param>
/// <param name="Line">Line on which the recording starts; null for the whole file.</param>
internal sealed record RecordingTexts(IReadOnlyList<string?> Time, string? Participant, string? Sequence, string? Trigger, string? Handedness, int? Line)
{
    /// <summary>Collects them.</summary>
    /// <param name="mapping">Where they stand.</param>
    /// <param name="text">The text of a field.</param>
    /// <param name="line">Line on which the recording starts.</param>
    public static RecordingTexts Of(SourceMapping mapping, Func<FieldSource, string?> text, int? line)
    {
        var rule = mapping.Recording!;
        return new RecordingTexts(
            [.. mapping.Time.Parts.Select(text)], Optional(mapping.Participant), Optional(mapping.Sequence), Optional(rule.Trigger), Optional(rule.Handedness), line);

        string? Optional(FieldSource? field) => field is null ? null : text(field);
    }
}
