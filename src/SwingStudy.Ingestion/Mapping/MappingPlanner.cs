using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Sources;
using SwingStudy.Domain.Variables;
using SwingStudy.Ingestion.Mapping.Cells;
using SwingStudy.Ingestion.Mapping.Columns;
using SwingStudy.Ingestion.Mapping.Rows;
using SwingStudy.Ingestion.Mapping.Times;
using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Mapping;

/// <summary>Binds a mapping to the headings, units and preamble of one file, and tells all that does not fit.</summary>
internal sealed class MappingPlanner
{
    private readonly SourceMapping _mapping;
    private readonly VariableDictionary _dictionary;
    private readonly SheetShape _shape;
    private readonly FixedTexts _fixed;
    private readonly List<Problem> _problems = [];
    private readonly List<Problem> _remarks = [];
    private readonly HashSet<int> _used = [];

    private MappingPlanner(SourceMapping mapping, VariableDictionary dictionary, SheetShape shape)
    {
        _mapping = mapping;
        _dictionary = dictionary;
        _shape = shape;
        _fixed = new FixedTexts(shape.Preamble, shape.NameMatch);
    }

    /// <summary>The plan, or all problems for which the file is held.</summary>
    /// <param name="mapping">The mapping.</param>
    /// <param name="dictionary">The variables.</param>
    /// <param name="shape">The file.</param>
    /// <param name="foundFormat">Format of times that was found in the file, when the mapping declares none; null before it is looked for.</param>
    public static Outcome<MappingPlan> Plan(SourceMapping mapping, VariableDictionary dictionary, SheetShape shape, TimeFormat? foundFormat = null) =>
        new MappingPlanner(mapping, dictionary, shape).Plan(foundFormat);

    private Outcome<MappingPlan> Plan(TimeFormat? foundFormat)
    {
        var format = _mapping.Time.Format is { } declared ? Compiled(declared) : foundFormat;
        if (_mapping.Participant is null)
            _problems.Add(MappingMessages.ParticipantUnmapped(_mapping));
        var participant = _mapping.Participant is { } who ? Required(who, "participant") : default;
        var timeParts = _mapping.Time.Parts.Select(part => Required(part, "time")).ToArray();
        var sequence = _mapping.Sequence is { } number ? Required(number, "sequence") : (ColumnPlace?)null;
        var phase = _mapping.Phase is { } named ? Required(named, "phase") : (ColumnPlace?)null;
        var columns = _mapping.Values.Select(pair => Value(pair.Key, pair.Value)).OfType<ValueColumn>().OrderBy(column => column.Place.Position).ToList();
        var notData = new RowClassifier(_mapping.NotData, RuleColumn, Tokens(null));
        var practice = new RowClassifier(_mapping.Practice, RuleColumn, Tokens(null));
        NoteUnmapped();
        if (_problems.Count > 0)
            return Outcome<MappingPlan>.Failed(_problems);
        return new MappingPlan
        {
            Mapping = _mapping,
            Time = new TimeColumn(timeParts, format, new MissingTokens(_mapping.Missing, _mapping.Time.Parts.SelectMany(part => part.Missing)), _shape.Epoch1904),
            Participant = participant,
            ParticipantMissing = Tokens(_mapping.Participant),
            Sequence = sequence,
            SequenceMissing = Tokens(_mapping.Sequence),
            Phase = phase,
            PhaseWords = new WordList(_mapping.Phase?.Words ?? new Dictionary<string, string>()),
            PhaseMissing = Tokens(_mapping.Phase),
            Numbers = [.. columns.OfType<NumericColumn>()],
            Texts = [.. columns.OfType<TextValueColumn>()],
            NotData = notData,
            Practice = practice,
            Remarks = _remarks,
        };
    }

    private TimeFormat? Compiled(string text)
    {
        if (TimeFormat.TryCompile(text, out var format, out var fault))
            return format;
        _problems.Add(MappingMessages.TimeFormatFault(_mapping, text, fault));
        return null;
    }

    private MissingTokens Tokens(FieldSource? field) => new(_mapping.Missing, field?.Missing ?? []);

    private ColumnPlace Required(FieldSource field, string use)
    {
        if (Find(field, out var declaredUnit) is { } heading)
            return new ColumnPlace(heading.Position, heading.Name, null);
        _ = declaredUnit;
        if (field.Column is { } column)
            _problems.Add(MappingMessages.ColumnMissing(_mapping, _shape, column, use, field.Line));
        else if (_fixed.Of(field) is { } text)
            return new ColumnPlace(-1, FixedTexts.PlaceName(field), text);
        else
            _problems.Add(MappingMessages.FixedMissing(_mapping, _shape, FixedTexts.PlaceName(field), use, field.Line));
        return default;
    }

    /// <summary>The heading, ignoring a unit in the mapping's brackets when the file has another one there: the two are compared afterwards.</summary>
    private Heading? Find(FieldSource field, out string? unitOfMapping)
    {
        unitOfMapping = null;
        if (field.Column is not { } column)
            return null;
        var (bare, unit) = HeadingText.SplitUnit(HeadingText.Clean(column));
        unitOfMapping = unit;
        var heading = _shape.Columns.Find(column) ?? (unit is null ? null : _shape.Columns.Find(bare));
        if (heading is not null)
            _used.Add(heading.Position);
        return heading;
    }

    private ValueColumn? Value(string name, FieldSource field)
    {
        var variable = _dictionary[name];
        var heading = Find(field, out var unitOfMapping);
        ColumnPlace place;
        if (heading is not null)
        {
            place = new ColumnPlace(heading.Position, heading.Name, null);
        }
        else if (field.Column is { } column)
        {
            _problems.Add(MappingMessages.ColumnMissing(_mapping, _shape, column, name, field.Line));
            return null;
        }
        else if (_fixed.Of(field) is { } text)
        {
            place = new ColumnPlace(-1, FixedTexts.PlaceName(field), text);
        }
        else
        {
            _remarks.Add(MappingMessages.FixedMissing(_mapping, _shape, FixedTexts.PlaceName(field), name, field.Line));
            return null;
        }

        var missing = Tokens(field);
        var words = new WordList(field.Words);
        switch (variable.Type)
        {
            case VariableType.Number or VariableType.Integer:
                var units = new UnitAgreement(_mapping, _shape, variable, field, heading, unitOfMapping);
                if (units.Conversion(_problems, _remarks) is not { } conversion)
                    return null;
                var scale = LinearScale.Of(field.Scale, field.Offset, field.Negate, conversion.Factor, conversion.Offset);
                var numbers = new NumberText(field.Decimal ?? _shape.Decimal, ThousandsFor(field));
                var measured = variable.Unit is { } code && (units.Unit is not null || field.HasUnitInCells)
                    ? new MeasuredText(numbers, field, units.Unit, Domain.Units.UnitCatalogue.ParseCode(code)!, scale)
                    : null;
                return new NumberValueColumn(variable, place, missing, numbers, scale, measured) { IsMirrored = field.Mirror };
            case VariableType.Boolean:
                return new BooleanValueColumn(variable, place, missing, words);
            default:
                return new TextValueColumn(variable, place, missing, words);
        }
    }

    /// <summary>The file's sign between thousands, unless this column uses it as its decimal sign.</summary>
    private char? ThousandsFor(FieldSource field) => _mapping.Text.Thousands is { } sign && sign != (field.Decimal ?? _shape.Decimal) ? sign : null;

    private int RuleColumn(string column)
    {
        if (_shape.Columns.Find(column) is { } heading)
        {
            _used.Add(heading.Position);
            return heading.Position;
        }

        _problems.Add(MappingMessages.ColumnMissing(_mapping, _shape, column, "a row rule", null));
        return 0;
    }

    private void NoteUnmapped()
    {
        var ignored = _mapping.Ignore.Select(_shape.Columns.Find).OfType<Heading>().Select(heading => heading.Position).ToHashSet();
        foreach (var heading in _shape.Columns.Headings)
        {
            if (!_used.Contains(heading.Position) && !ignored.Contains(heading.Position) && heading.Text.Length > 0)
                _remarks.Add(MappingMessages.ColumnUnmapped(_mapping, _shape, heading.Name));
        }
    }
}
