using System.Collections.Concurrent;
using System.Globalization;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Tables;

namespace SwingStudy.Ingestion.Mapping;

/// <summary>Makes rows of the captures table out of the mapped rows of one file; several threads may use it at once.</summary>
internal sealed class CaptureRows
{
    private readonly TableDefinition _captures;
    private readonly string _original;
    private readonly string _short;
    private readonly MappedFile _file;
    private readonly IReadOnlyDictionary<int, string> _aliasHash;
    private readonly Dictionary<string, int> _numbers;
    private readonly Dictionary<string, int> _texts;
    private readonly long _delay;

    /// <summary>Rows that were stored already: their arrays take the next ones, because memory that is new costs more than filling it.</summary>
    private readonly ConcurrentBag<RowSet> _idle = [];

    /// <param name="captures">The table, with a column for each variable of the dictionary.</param>
    /// <param name="original">Hash of the original.</param>
    /// <param name="file">The mapped file.</param>
    /// <param name="aliasHash">Keyed hash of the name in the file, by its position in <see cref="MappedFile.Aliases"/>.</param>
    public CaptureRows(TableDefinition captures, Sha256 original, MappedFile file, IReadOnlyDictionary<int, string> aliasHash)
    {
        (_captures, _original, _short, _file, _aliasHash) = (captures, original.ToString(), original.Short, file, aliasHash);
        _delay = (long)Math.Round(file.Plan.Mapping.Time.DelaySeconds * 1000);
        _numbers = file.Plan.Numbers.Select((column, position) => (column.Variable.Name, position)).ToDictionary(pair => pair.Name, pair => pair.position, StringComparer.Ordinal);
        _texts = file.Plan.Texts.Select((column, position) => (column.Variable.Name, position)).ToDictionary(pair => pair.Name, pair => pair.position, StringComparer.Ordinal);
    }

    /// <summary>Rows of one player. Give them back by <see cref="Release"/> when they are stored.</summary>
    /// <param name="rows">Positions of taken rows, in file order.</param>
    /// <param name="participant">The player.</param>
    /// <param name="revisionOf">The capture that each row replaces, or null; empty when no row replaces any.</param>
    public RowSet Build(ReadOnlySpan<int> rows, ParticipantId participant, ReadOnlySpan<string?> revisionOf)
    {
        if (!_idle.TryTake(out var set) || set.Count != rows.Length)
            set = NewSet(rows.Length);
        var places = new int[rows.Length];
        var stretches = _file.Stretches(rows, places);
        for (var i = 0; i < set.Columns.Count; i++)
        {
            var name = _captures.Columns[i].Name;
            switch (set.Columns[i])
            {
                case TextColumn column when name == "capture_id":
                    FillIds(column.Values, rows);
                    break;
                case TextColumn column when name == "participant":
                    Array.Fill(column.Values, participant.ToString());
                    break;
                case TextColumn column when name == "alias_hash":
                    FillAliasHashes(column.Values, rows);
                    break;
                case TextColumn column when name == "revision_of":
                    column.Values.AsSpan().Clear();
                    revisionOf.CopyTo(column.Values);
                    break;
                case IntegerColumn column when name == "sequence":
                    stretches.Sequence(places, column.Values);
                    break;
                case IntegerColumn column when name == "original_row":
                    FillLines(column.Values, rows);
                    break;
                case InstantColumn column when name is "recorded_at" or "struck_at":
                    FillInstants(column.UnixMillis, rows, name == "struck_at" ? _delay : 0);
                    break;
                case BooleanColumn column when name == "is_practice":
                    stretches.Practice(places, column.Values);
                    break;
                case TextColumn column when _texts.TryGetValue(name, out var text):
                    stretches.Texts(text, places, column.Values);
                    break;
                case var column when _numbers.TryGetValue(name, out var number):
                    stretches.Numbers(number, places, column);
                    if (rows.Length > 0 && column is NumberColumn measured && _file.IsMirrored(number, rows[0]))
                        Turn(measured.Values);
                    break;
            }
        }

        return set;
    }

    /// <summary>Takes rows back whose values are stored.</summary>
    public void Release(RowSet rows) => _idle.Add(rows);

    /// <summary>Identifier of the capture on a line.</summary>
    public string IdOf(int line) => string.Create(CultureInfo.InvariantCulture, $"{_short}-{line}");

    /// <summary>Columns with what is the same in all rows of the file. One column serves all that are missing.</summary>
    private RowSet NewSet(int count)
    {
        var missing = new Dictionary<ColumnKind, Column>();
        return new RowSet(_captures, [.. _captures.Columns.Select(definition => definition.Name switch
        {
            "source" => Same(_file.Plan.Mapping.Source, count),
            "device" => Same(_file.Plan.Mapping.Device, count),
            "original_sha256" => Same(_original, count),
            "capture_id" or "participant" or "alias_hash" or "sequence" or "recorded_at" or "struck_at" or "is_practice" or "original_row" or "revision_of" =>
                Column.Missing(definition.Kind, count),
            var name when _numbers.ContainsKey(name) || _texts.ContainsKey(name) => Column.Missing(definition.Kind, count),
            _ => missing.TryGetValue(definition.Kind, out var column) ? column : missing[definition.Kind] = Column.Missing(definition.Kind, count),
        })]);
    }

    /// <summary>Taking from zero also makes a plain zero of a negative one.</summary>
    private static void Turn(double[] values)
    {
        for (var i = 0; i < values.Length; i++)
            values[i] = 0 - values[i];
    }

    private static TextColumn Same(string text, int count)
    {
        var texts = new string?[count];
        Array.Fill(texts, text);
        return new TextColumn(texts);
    }

    private void FillAliasHashes(string?[] hashes, ReadOnlySpan<int> rows)
    {
        var (latest, hash) = (-1, "");
        for (var i = 0; i < rows.Length; i++)
        {
            if (_file.AliasOf[rows[i]] != latest)
                hash = _aliasHash[latest = _file.AliasOf[rows[i]]];
            hashes[i] = hash;
        }
    }

    private void FillInstants(long[] millis, ReadOnlySpan<int> rows, long delay)
    {
        for (var i = 0; i < rows.Length; i++)
            millis[i] = _file.RecordedAt[rows[i]] - delay;
    }

    private void FillLines(long?[] lines, ReadOnlySpan<int> rows)
    {
        for (var i = 0; i < rows.Length; i++)
            lines[i] = _file.Lines[rows[i]];
    }

    private void FillIds(string?[] ids, ReadOnlySpan<int> rows)
    {
        for (var i = 0; i < rows.Length; i++)
            ids[i] = IdOf(_file.Lines[rows[i]]);
    }
}
