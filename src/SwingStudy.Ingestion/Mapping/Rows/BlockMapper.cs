using System.Globalization;
using SwingStudy.Domain.Sources;
using SwingStudy.Ingestion.Mapping.Cells;
using SwingStudy.Ingestion.Mapping.Columns;
using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Mapping.Rows;

/// <summary>Turns blocks of cells into canonical values. One for each thread, because it keeps a pool of texts and its arrays.</summary>
internal sealed class BlockMapper
{
    // Columns are read one after the other over so many rows that their text stays in the processor's cache.
    private const int TileRows = 256;
    private static readonly NumberText WholeNumbers = new('.', null);
    private readonly MappingPlan _plan;
    private readonly bool _rejectsRows;
    private readonly Step[] _steps;
    private readonly TextPool _pool = new();
    private readonly RowStates _rows;

    public BlockMapper(MappingPlan plan)
    {
        _plan = plan;
        _rows = new RowStates(plan);
        _rejectsRows = plan.Mapping.BadCells == BadCellPolicy.RejectRow;
        _steps = [.. Steps(plan).OrderBy(step => step.Position)];
    }

    /// <summary>Maps one block.</summary>
    public MappedBlock Map(RawBlock block)
    {
        var rows = _rows;
        rows.Begin(block);
        for (var from = 0; from < block.RowCount; from += TileRows)
        {
            var upTo = Math.Min(from + TileRows, block.RowCount);
            Classify(rows, from, upTo);
            ReadTimes(rows, from, upTo);
            ReadAliases(rows, from, upTo);
            foreach (var step in _steps)
            {
                switch (step.Kind)
                {
                    case StepKind.Number: ReadNumbers(rows, step.Index, from, upTo); break;
                    case StepKind.Text: ReadTexts(rows, step.Index, from, upTo); break;
                    case StepKind.Sequence: ReadSequence(rows, from, upTo); break;
                    default: ReadPhases(rows, from, upTo); break;
                }
            }
        }

        return rows.ToBlock();
    }

    private static IEnumerable<Step> Steps(MappingPlan plan)
    {
        for (var i = 0; i < plan.Numbers.Count; i++)
            yield return new Step(StepKind.Number, i, plan.Numbers[i].Place.Position);
        for (var i = 0; i < plan.Texts.Count; i++)
            yield return new Step(StepKind.Text, i, plan.Texts[i].Place.Position);
        if (plan.Sequence is { } sequence)
            yield return new Step(StepKind.Sequence, 0, sequence.Position);
        if (plan.Phase is { } phase)
            yield return new Step(StepKind.Phase, 0, phase.Position);
    }

    private void Classify(RowStates rows, int from, int upTo)
    {
        var block = rows.Block;
        for (var row = from; row < upTo; row++)
        {
            rows.Lines[row] = block.Line(row);
            if (!_plan.NotData.IsEmpty && _plan.NotData.Label(block, row) is { } label)
                rows.SetNotData(row, label);
            else if (!_plan.Practice.IsEmpty && _plan.Practice.Label(block, row) is not null)
                rows.SetPractice(row);
        }
    }

    private void ReadTimes(RowStates rows, int from, int upTo)
    {
        var time = _plan.Time;
        var mayBeUtc = rows.IsUtc is not null;
        for (var row = from; row < upTo; row++)
        {
            if (!rows.IsOpen(row))
                continue;
            var verdict = time.Read(rows.Block, row, out rows.Millis[row], out var isUtc);
            if (mayBeUtc)
                rows.IsUtc![row] = isUtc;
            if (verdict == CellVerdict.Missing)
                rows.RejectRow(row, rows.Block.Raw(row).ToString(), RejectReason.TimeMissing, time.Expected, time.Name, null);
            else if (verdict != CellVerdict.Value)
                rows.RejectRow(row, time.RawOf(rows.Block, row), RejectReason.Unparsable, time.Expected, time.Name, null);
        }
    }

    private void ReadAliases(RowStates rows, int from, int upTo)
    {
        var place = _plan.Participant;
        for (var row = from; row < upTo; row++)
        {
            if (!rows.IsOpen(row))
                continue;
            var cell = CellOf(rows.Block, row, place);
            if (_plan.ParticipantMissing.Hold(cell))
                rows.RejectRow(row, rows.Block.Raw(row).ToString(), RejectReason.ParticipantMissing, "a player's name or code", place.Name, null);
            else
                rows.Aliases[row] = _pool.Get(cell);
        }
    }

    private void ReadNumbers(RowStates rows, int index, int from, int upTo)
    {
        var column = _plan.Numbers[index];
        var values = rows.Numbers[index];
        var block = rows.Block;
        var place = column.Place;
        for (var row = from; row < upTo; row++)
        {
            values[row] = double.NaN;
            if (!rows.IsOpen(row))
                continue;
            var cell = CellOf(block, row, place);
            var verdict = column.Read(cell, KindOf(block, row, place), out var value);
            values[row] = value;
            if (verdict == CellVerdict.BecameDate)
                Reject(rows, row, cell, RejectReason.BecameDate, OfDate(column, block.Number(row, place.Position)), place.Name, column.Variable.Name);
            else if (verdict > CellVerdict.Missing)
                RejectCell(rows, row, cell, verdict, column);
        }
    }

    // What was typed is lost when a sheet makes a date of it; its serial is all that tells which number it may have been.
    private static string OfDate(ValueColumn column, double serial) =>
        string.Create(CultureInfo.InvariantCulture, $"{column.Expected}; the sheet made a date of the number, and keeps {serial:R}");

    private void ReadTexts(RowStates rows, int index, int from, int upTo)
    {
        var column = _plan.Texts[index];
        var values = rows.Texts[index];
        for (var row = from; row < upTo; row++)
        {
            if (!rows.IsOpen(row))
                continue;
            var cell = CellOf(rows.Block, row, column.Place);
            var verdict = column.Read(cell, _pool, out values[row]);
            if (verdict > CellVerdict.Missing)
                RejectCell(rows, row, cell, verdict, column);
        }
    }

    private void ReadSequence(RowStates rows, int from, int upTo)
    {
        var place = _plan.Sequence!.Value;
        for (var row = from; row < upTo; row++)
        {
            if (!rows.IsOpen(row))
                continue;
            var cell = CellOf(rows.Block, row, place);
            if (WholeNumbers.TryRead(cell, out var number) && number == Math.Floor(number) && Math.Abs(number) < 1L << 53)
                rows.Sequence[row] = number;
            else if (!_plan.SequenceMissing.Hold(cell))
                Reject(rows, row, cell, RejectReason.Unparsable, "a whole number", place.Name, null);
        }
    }

    private void ReadPhases(RowStates rows, int from, int upTo)
    {
        var place = _plan.Phase!.Value;
        for (var row = from; row < upTo; row++)
        {
            if (!rows.IsOpen(row))
                continue;
            var cell = CellOf(rows.Block, row, place);
            if (!_plan.PhaseMissing.Hold(cell))
                rows.Phases![row] = _plan.PhaseWords.TryGet(cell, out var word) ? word : _pool.Get(cell);
        }
    }

    private void RejectCell(RowStates rows, int row, ReadOnlySpan<char> cell, CellVerdict verdict, ValueColumn column) =>
        Reject(rows, row, cell, RejectReason.Of(verdict), column.Expected, column.Place.Name, column.Variable.Name);

    private void Reject(RowStates rows, int row, ReadOnlySpan<char> cell, string reason, string expected, string heading, string? variable)
    {
        var raw = _pool.Get(cell);
        if (_rejectsRows)
            rows.RejectRow(row, raw, reason, expected, heading, variable);
        else
            rows.RejectCell(row, raw, reason, expected, heading, variable);
    }

    private static ReadOnlySpan<char> CellOf(RawBlock block, int row, ColumnPlace place) =>
        CellText.Trim(place.IsFixed ? place.Fixed : block.Cell(row, place.Position));

    private static CellKind KindOf(RawBlock block, int row, ColumnPlace place)
    {
        if (place.IsFixed)
            return CellKind.Text;
        var kind = block.Kind(row, place.Position);
        return kind == CellKind.Empty ? CellKind.Text : kind;
    }

    private enum StepKind
    {
        Number,
        Text,
        Sequence,
        Phase,
    }

    private readonly record struct Step(StepKind Kind, int Index, int Position);
}
