using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Mapping.Rows;

/// <summary>The rows of one block while they are read.</summary>
internal sealed class RowStates
{
    private readonly byte[] _states;
    private readonly List<MappedReject> _rejects = [];
    private readonly Dictionary<string, int> _notData = new(StringComparer.Ordinal);
    private bool[]? _practice;
    private int _rejectedRows;

    public RowStates(RawBlock block, MappingPlan plan)
    {
        var count = block.RowCount;
        Block = block;
        _states = new byte[count];
        Lines = new int[count];
        Millis = new long[count];
        IsUtc = plan.Time.Format is { MayCarryOffset: true } ? new bool[count] : null;
        Aliases = new string?[count];
        Sequence = new long[count];
        Array.Fill(Sequence, long.MinValue);
        Phases = plan.Phase is null ? null : new string?[count];
        Numbers = new double[plan.Numbers.Count][];
        for (var i = 0; i < Numbers.Length; i++)
            Numbers[i] = GC.AllocateUninitializedArray<double>(count);
        Texts = new string?[plan.Texts.Count][];
        for (var i = 0; i < Texts.Length; i++)
            Texts[i] = new string?[count];
    }

    private enum State : byte
    {
        Open,
        NotData,
        Rejected,
    }

    public RawBlock Block { get; }

    public int[] Lines { get; }

    public long[] Millis { get; }

    public bool[]? IsUtc { get; }

    public string?[] Aliases { get; }

    public long[] Sequence { get; }

    public string?[]? Phases { get; }

    public double[][] Numbers { get; }

    public string?[][] Texts { get; }

    /// <summary>Whether the row is still to be taken.</summary>
    public bool IsOpen(int row) => _states[row] == (byte)State.Open;

    public void SetNotData(int row, string label)
    {
        _states[row] = (byte)State.NotData;
        _notData[label] = _notData.GetValueOrDefault(label) + 1;
    }

    public void SetPractice(int row) => (_practice ??= new bool[_states.Length])[row] = true;

    public void RejectRow(int row, string raw, string reason, string expected, string? column, string? variable)
    {
        _states[row] = (byte)State.Rejected;
        _rejectedRows++;
        _rejects.Add(new MappedReject(Lines[row], raw, reason, expected, true, column, variable));
    }

    public void RejectCell(int row, string raw, string reason, string expected, string? column, string? variable) =>
        _rejects.Add(new MappedReject(Lines[row], raw, reason, expected, false, column, variable));

    public MappedBlock ToBlock()
    {
        var kept = new int[_states.AsSpan().Count((byte)State.Open)];
        for (int row = 0, at = 0; row < _states.Length; row++)
        {
            if (_states[row] == (byte)State.Open)
                kept[at++] = row;
        }

        return new MappedBlock
        {
            Kept = kept,
            Lines = Lines,
            Millis = Millis,
            IsUtc = IsUtc,
            Aliases = Aliases,
            Sequence = Sequence,
            Practice = _practice,
            Phases = Phases,
            Numbers = Numbers,
            Texts = Texts,
            Rejects = [.. _rejects.OrderBy(reject => reject.Line)],
            NotData = _notData,
            RejectedRows = _rejectedRows,
        };
    }
}
