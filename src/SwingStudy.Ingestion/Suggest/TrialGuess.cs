using SwingStudy.Domain.Sources;

namespace SwingStudy.Ingestion.Suggest;

/// <summary>Drafts how a text with many recordings is divided, and what its columns beside the samples say of each.</summary>
internal static class TrialGuess
{
    private const int FewestRepeats = 3;
    private const double Sure = 0.7;
    private static readonly string[] TrialWords = ["trial", "swing", "shot", "recording", "rep", "repetition", "stroke", "versuch", "schlag", "essai", "coup", "intento", "golpe", "slag"];

    /// <summary>Fills trial, player and time from columns that repeat over the samples.</summary>
    public static RecordingRule Fill(IReadOnlyList<ColumnProfile> columns, RecordingRule rule, string? zone, Draft draft)
    {
        var others = columns.Where(column => column.Heading.Name != rule.Clock?.Column && rule.Channels.Values.All(field => field.Column != column.Heading.Name)).ToList();
        if (others.Find(column => column.IsNumeric && !column.Counts && column.Words.Any(TrialWords.Contains) && Repeats(column)) is { } trial)
        {
            rule = rule with { Form = RecordingForm.Trials, Trial = new FieldSource { Column = trial.Heading.Name } };
            draft.Say("recording.form", "trials", 0.8, $"'{trial.Heading.Name}' numbers recordings below each other");
            draft.Say("recording.trial", trial.Heading.Name, 0.8, "its number stays over many samples");
        }

        if (others.Find(column => !column.IsNumeric && !column.IsClock && column.Texts.Count > 0 && RoleWords.Likeness(column, ColumnRole.Participant) >= Sure) is { } player)
        {
            draft.Mapping = draft.Mapping with { Participant = new FieldSource { Column = player.Heading.Name } };
            draft.Say("participant", player.Heading.Name, 0.85, "heading names a person");
        }

        if (others.Find(column => !column.IsClock && column.TimeFormats.Any(format => format.Text.Contains('H', StringComparison.Ordinal) || format.Text.Contains("hh", StringComparison.Ordinal) || format.Text == "iso") && column.Texts.Count > 0) is { } time)
        {
            var format = time.TimeFormats.Count == 1 ? time.TimeFormats[0].Text : null;
            draft.Mapping = draft.Mapping with { Time = new TimeRule { Parts = [new FieldSource { Column = time.Heading.Name }], Format = format, Zone = zone } };
            draft.Say("time.parts", time.Heading.Name, 0.75, "its cells are times; check that they are those of the first samples");
            draft.Say("time.format", format ?? "", format is null ? 0.1 : 0.9, format is null ? "more than one format fits: choose one" : "the one format that fits");
            draft.Say("time.zone", zone ?? "", zone is null ? 0 : 0.7, zone is null ? "declare the IANA zone" : "the zone of the study");
        }

        return rule;
    }

    /// <summary>Columns of the second and later recordings where all channels occur again side by side; empty where they do not.</summary>
    public static IReadOnlyCollection<string> SideBySide(IReadOnlyList<(ColumnProfile Column, (string? Side, string Quantity, char Axis) Load)> loads)
    {
        var groups = loads.GroupBy(pair => pair.Load).ToList();
        return groups.Count >= FewestRepeats && groups.TrueForAll(group => group.Count() > 1)
            ? [.. groups.SelectMany(group => group.Skip(1)).Select(pair => pair.Column.Heading.Name)]
            : [];
    }

    private static bool Repeats(ColumnProfile column) => column.Sorted() is { Length: > 0 } sorted && sorted.Distinct().Count() * FewestRepeats <= sorted.Length;
}
