using SwingStudy.Domain.Sources;
using SwingStudy.Ingestion.Mapping;
using SwingStudy.Ingestion.Mapping.Cells;
using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Recordings;

/// <summary>Finds what is written about a recording at its first row.</summary>
internal sealed class RunHeads
{
    private readonly SourceMapping _mapping;
    private readonly FixedTexts _fixed;
    private RecordingTexts? _whole;
    private readonly Dictionary<string, int> _positions = new(StringComparer.OrdinalIgnoreCase);

    public RunHeads(SourceMapping mapping, FixedTexts texts, SampleColumns columns)
    {
        _mapping = mapping;
        _fixed = texts;
        var rule = mapping.Recording!;
        FieldSource?[] fields = [.. mapping.Time.Parts, mapping.Participant, mapping.Sequence, rule.Trigger, rule.Handedness];
        foreach (var column in fields.Select(field => field?.Column).OfType<string>().Distinct(StringComparer.OrdinalIgnoreCase))
            _positions[column] = columns.Position(column, "what is said of a recording");
        HasOwnTimes = mapping.Time.Parts.Any(part => part.Column is not null);
    }

    /// <summary>Whether the time stands in rows, so that it is that of the very first sample.</summary>
    public bool HasOwnTimes { get; }

    /// <summary>The texts at a row.</summary>
    public RecordingTexts At(RawBlock block, int row) => _positions.Count > 0
        ? RecordingTexts.Of(_mapping, field => field.Column is { } column ? CellText.Trim(block.Cell(row, _positions[column])).ToString() : _fixed.Of(field), block.Line(row))
        : (_whole ??= RecordingTexts.Of(_mapping, _fixed.Of, null)) with { Line = block.Line(row) };
}
