using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Mapping.Rows;

/// <summary>The rows of one block while they are read. One object serves block after block, so that its arrays are made once.</summary>
internal sealed class RowStates
{
    private readonly MappingPlan _plan;
    private readonly PackingScratch _scratch = new();
    private readonly List<MappedReject> _rejects = [];
    private readonly Dictionary<string, int> _notData = new(StringComparer.Ordinal);
    private byte[] _states = [];
    private bool[] _practice = [];
    private bool _hasPractice;
    private int _rejectedRows;

    public RowStates(MappingPlan plan)
    {
        _plan = plan;
        Numbers = new double[plan.Numbers.Count][];
        Texts = new string?[plan.Texts.Count][];
        MakeRoom(0);
    }

    private enum State : byte
    {
        Open,
        NotData,
        Rejected,
    }

    public RawBlock Block { get; private set; } = null!;

    public int[] Lines { get; private set; } = [];

    public long[] Millis { get; private set; } = [];

    public bool[]? IsUtc { get; private set; }

    public string?[] Aliases { get; private set; } = [];

    public double[] Sequence { get; private set; } = [];

    public string?[]? Phases { get; private set; }

    public double[][] Numbers { get; }

    public string?[][] Texts { get; }

    /// <summary>Begins a block: all its rows are open, and nothing is read.</summary>
    public void Begin(RawBlock block)
    {
        Block = block;
        var count = block.RowCount;
        if (count > _states.Length)
            MakeRoom(count);
        _states.AsSpan(0, count).Clear();
        _practice.AsSpan(0, count).Clear();
        Aliases.AsSpan(0, count).Clear();
        Sequence.AsSpan(0, count).Fill(double.NaN);
        Phases?.AsSpan(0, count).Clear();
        foreach (var texts in Texts)
            texts.AsSpan(0, count).Clear();
        _rejects.Clear();
        _notData.Clear();
        (_hasPractice, _rejectedRows) = (false, 0);
    }

    /// <summary>Whether the row is still to be taken.</summary>
    public bool IsOpen(int row) => _states[row] == (byte)State.Open;

    public void SetNotData(int row, string label)
    {
        _states[row] = (byte)State.NotData;
        _notData[label] = _notData.GetValueOrDefault(label) + 1;
    }

    public void SetPractice(int row) => _practice[row] = _hasPractice = true;

    public void RejectRow(int row, string raw, string reason, string expected, string? column, string? variable)
    {
        _states[row] = (byte)State.Rejected;
        _rejectedRows++;
        _rejects.Add(new MappedReject(Lines[row], raw, reason, expected, true, column, variable));
    }

    public void RejectCell(int row, string raw, string reason, string expected, string? column, string? variable) =>
        _rejects.Add(new MappedReject(Lines[row], raw, reason, expected, false, column, variable));

    /// <summary>The rows that were taken, packed.</summary>
    public MappedBlock ToBlock()
    {
        var states = _states.AsSpan(0, Block.RowCount);
        var kept = new int[states.Count((byte)State.Open)];
        for (int row = 0, at = 0; row < states.Length; row++)
        {
            if (states[row] == (byte)State.Open)
                kept[at++] = row;
        }

        return new MappedBlock
        {
            Count = kept.Length,
            Lines = Picked(Lines, kept),
            Millis = Picked(Millis, kept),
            IsUtc = IsUtc is null ? null : Picked(IsUtc, kept),
            Aliases = PackedTexts.Of(Aliases, kept, _scratch),
            Sequence = PackedNumbers.Of(Sequence, kept, _scratch),
            Practice = _hasPractice ? Picked(_practice, kept) : null,
            Phases = Phases is null ? null : PackedTexts.Of(Phases, kept, _scratch),
            Numbers = Array.ConvertAll(Numbers, numbers => PackedNumbers.Of(numbers, kept, _scratch)),
            Texts = Array.ConvertAll(Texts, texts => PackedTexts.Of(texts, kept, _scratch)),
            Rejects = [.. _rejects.OrderBy(reject => reject.Line)],
            NotData = _notData.ToDictionary(StringComparer.Ordinal),
            RejectedRows = _rejectedRows,
        };
    }

    private static T[] Picked<T>(T[] values, int[] kept) => Array.ConvertAll(kept, row => values[row]);

    private void MakeRoom(int rows)
    {
        _states = new byte[rows];
        _practice = new bool[rows];
        Lines = new int[rows];
        Millis = new long[rows];
        IsUtc = _plan.Time.Format is { MayCarryOffset: true } ? new bool[rows] : null;
        Aliases = new string?[rows];
        Sequence = new double[rows];
        Phases = _plan.Phase is null ? null : new string?[rows];
        for (var i = 0; i < Numbers.Length; i++)
            Numbers[i] = new double[rows];
        for (var i = 0; i < Texts.Length; i++)
            Texts[i] = new string?[rows];
    }
}
