using SwingStudy.Domain.Sources;

namespace SwingStudy.Ingestion.Suggest;

/// <summary>The parts of a draft that only recordings have.</summary>
internal sealed partial class DraftYaml
{
    private void Recordings(SourceMapping mapping, RecordingRule rule)
    {
        Line(0, "recording:");
        if (rule.Form != RecordingForm.Single)
            Line(2, $"form: {Domain.Identifiers.Word.Of(rule.Form)}", "recording.form");
        if (rule.Clock is { } counted && rule.ClockKind != ClockKind.Time)
            Line(2, $"clock: {{ column: {Quoted(counted.Column!)}, unit: {Domain.Identifiers.Word.Of(rule.ClockKind)} }}", "recording.clock");
        foreach (var (key, field) in ((string, FieldSource?)[])[("trial", rule.Trial), ("clock", rule.ClockKind == ClockKind.Time ? rule.Clock : null), ("rate", rule.Rate), ("trigger", rule.Trigger)])
        {
            if (field is not null)
                Line(2, $"{key}: {Field(field)}", $"recording.{key}");
            else
                Note($"recording.{key}");
        }

        Line(2, $"axes: {{ x: {Quoted(rule.Axes.X)}, y: {Quoted(rule.Axes.Y)}, z: {Quoted(rule.Axes.Z)} }}", "recording.axes");
        if (rule.Channels.Keys.Any(name => name.EndsWith("_force_y", StringComparison.Ordinal)) || mapping.Plates.Count > 0)
            Line(2, $"loads: {Domain.Identifiers.Word.Of(rule.Loads)}", "recording.loads");
        if (rule.LandmarkUnit is { } unit)
            Line(2, $"landmark_unit: {unit}", "recording.landmark_unit");
        if (rule.LandmarkColumns != RecordingRule.DefaultLandmarkColumns)
            Line(2, $"landmark_columns: {Quoted(rule.LandmarkColumns)}");
        Block("channels:", [.. rule.Channels.Select(pair => ($"{pair.Key}: {Field(pair.Value)}", $"channels.{pair.Key}"))]);
        Block("landmarks:", [.. rule.Landmarks.Select(pair => ($"{pair.Key}: {Quoted(pair.Value)}", $"landmarks.{pair.Key}"))]);
        Block("events:", [.. rule.Events.Select(pair => ($"{pair.Key}: {Quoted(pair.Value)}", $"events.{pair.Key}"))]);
        Block("plates:", [.. mapping.Plates.Select(pair => ($"{pair.Key}: {{ platform: {pair.Value.Platform} }}", $"plates.{pair.Key}"))]);
        Ignored(mapping);
    }
}
