using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Sources;
using SwingStudy.Domain.Variables;
using SwingStudy.Ingestion.Mapping;
using SwingStudy.Ingestion.Mapping.Cells;
using SwingStudy.Ingestion.Mapping.Columns;
using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Recordings;

/// <summary>Binds the channels, landmarks and clock of a mapping to the columns of a file.</summary>
internal sealed class SampleColumns
{
    private readonly SourceMapping _mapping;
    private readonly SheetShape _shape;
    private readonly List<Problem> _problems = [];
    private readonly List<Problem> _remarks = [];
    private readonly HashSet<int> _used = [];

    public SampleColumns(SourceMapping mapping, SheetShape shape)
    {
        _mapping = mapping;
        _shape = shape;
    }

    /// <summary>What stands against the file.</summary>
    public IReadOnlyList<Problem> Problems => _problems;

    /// <summary>What should be known.</summary>
    public IReadOnlyList<Problem> Remarks => _remarks;

    /// <summary>All columns of a file with one recording at a time; with problems where one is missing.</summary>
    public SampleColumn[] All() => [.. NamedChannel.Of(_mapping).Select(named => Bind(named.Channel, named.Unit, named.Field, "")).OfType<SampleColumn>()];

    /// <summary>The columns of each recording of a wide file, by the text before their names.</summary>
    public IReadOnlyList<(string Trial, SampleColumn[] Columns)> ByTrial()
    {
        var named = NamedChannel.Of(_mapping).Where(channel => channel.Field.Column is not null).ToList();
        var trials = _shape.Columns.Headings.Select(heading => TrialOf(heading.Text, named[0].Field.Column!)).OfType<string>().Distinct(StringComparer.OrdinalIgnoreCase)
            .Where(trial => named.TrueForAll(channel => _shape.Columns.Find($"{trial} {channel.Field.Column}") is not null)).ToList();
        if (trials.Count == 0)
            _problems.Add(RecordingMessages.WideMissing(_mapping, _shape.File, named.Select(channel => channel.Field.Column!)));
        return [.. trials.Select(trial => (trial, named.Select(channel => Bind(channel.Channel, channel.Unit, channel.Field, trial + " ")).OfType<SampleColumn>().ToArray()))];
    }

    /// <summary>A number column that is no channel: the clock, the column that triggers.</summary>
    public SampleColumn? Number(FieldSource field, string name, string unit) => Bind(name, unit, field, "");

    /// <summary>The clock's column.</summary>
    /// <param name="rule">The rule; its clock is set.</param>
    /// <param name="rateHz">The declared rate, for a clock that counts frames.</param>
    public SampleColumn? Clock(RecordingRule rule, double rateHz) => rule.ClockKind switch
    {
        ClockKind.Time => Number(rule.Clock!, "clock", "s"),
        ClockKind.Frames => Number(rule.Clock! with { Unit = "1", Scale = rule.Clock!.Scale / rateHz }, "clock", "1"),
        _ => Number(rule.Clock! with { Unit = "1" }, "clock", "1") is { } column ? column with { IsTimeOfDay = true } : null,
    };

    /// <summary>Position of a column of texts; -1, with a problem, when it is not there.</summary>
    public int Position(string column, string use)
    {
        if (_shape.Columns.Find(column) is { } heading)
        {
            _used.Add(heading.Position);
            return heading.Position;
        }

        _problems.Add(MappingMessages.ColumnMissing(_mapping, _shape, column, use, null));
        return -1;
    }

    /// <summary>Remarks on columns that nobody mapped.</summary>
    public void NoteUnmapped()
    {
        var ignored = _mapping.Ignore.Select(_shape.Columns.Find).OfType<Heading>().ToHashSet();
        foreach (var heading in _shape.Columns.Headings.Where(heading => !_used.Contains(heading.Position) && !ignored.Contains(heading) && heading.Text.Length > 0))
            _remarks.Add(MappingMessages.ColumnUnmapped(_mapping, _shape, heading.Name));
    }

    private static string? TrialOf(string heading, string column)
    {
        var (bare, wanted) = (HeadingText.SplitUnit(heading).Bare, HeadingText.SplitUnit(HeadingText.Clean(column)).Bare);
        return bare.Length > wanted.Length + 1 && bare.EndsWith(" " + wanted, StringComparison.OrdinalIgnoreCase) ? bare[..^(wanted.Length + 1)] : null;
    }

    private SampleColumn? Bind(string name, string unit, FieldSource field, string prefix)
    {
        if (field.Column is not { } column)
        {
            _problems.Add(MappingMessages.ColumnMissing(_mapping, _shape, FixedTexts.PlaceName(field), name, field.Line));
            return null;
        }

        var (bare, unitOfMapping) = HeadingText.SplitUnit(HeadingText.Clean(column));
        if ((_shape.Columns.Find(prefix + column) ?? (unitOfMapping is null ? null : _shape.Columns.Find(prefix + bare))) is not { } heading)
        {
            _problems.Add(MappingMessages.ColumnMissing(_mapping, _shape, prefix + column, name, field.Line));
            return null;
        }

        _used.Add(heading.Position);
        var quantity = new Variable { Name = name, Title = name, Description = name, Type = VariableType.Number, Group = "recording", Unit = unit };
        if (new UnitAgreement(_mapping, _shape, quantity, field, heading, unitOfMapping).Conversion(_problems, _remarks) is not { } conversion)
            return null;
        var sign = field.Decimal ?? _shape.Decimal;
        return new SampleColumn(
            name, unit, heading.Position, heading.Name,
            new NumberText(sign, _mapping.Text.Thousands is { } thousands && thousands != sign ? thousands : null),
            LinearScale.Of(field.Scale, field.Offset, field.Negate, conversion.Factor, conversion.Offset),
            new MissingTokens(_mapping.Missing, field.Missing));
    }
}
