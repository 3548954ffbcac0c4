using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Sources;
using SwingStudy.Ingestion.Mapping;
using SwingStudy.Ingestion.Mapping.Cells;
using SwingStudy.Ingestion.Mapping.Rows;
using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Recordings;

/// <summary>Recordings in text (or a workbook, or JSON) with one sample a row.</summary>
internal sealed class TextRecordings : IRecordingReader
{
    private readonly RecordDocument _document;
    private readonly RecordingRequest _request;
    private readonly SheetShape _shape;
    private readonly FixedTexts _fixed;
    private readonly List<Problem> _problems = [];
    private readonly List<Problem> _remarks = [];
    private readonly List<MappedReject> _rejects = [];
    private readonly SortedDictionary<string, long> _notData = new(StringComparer.Ordinal);
    private long _samples;
    private long _taken;
    private long _rejected;

    private TextRecordings(RecordDocument document, RecordingRequest request)
    {
        _document = document;
        _request = request;
        _shape = SheetShape.Of(document, request.NameMatch);
        _fixed = new FixedTexts(document.Preamble, request.NameMatch, request.Index);
        _remarks.AddRange(document.Notices);
    }

    /// <inheritdoc/>
    public IReadOnlyList<PreambleLine> Preamble => _document.Preamble;

    /// <inheritdoc/>
    public string? Encoding => _document.Encoding;

    /// <inheritdoc/>
    public char? Delimiter => _document.Delimiter;

    /// <inheritdoc/>
    public char? Decimal => _document.Decimal;

    /// <inheritdoc/>
    public IReadOnlyList<Problem> Problems => _problems;

    /// <inheritdoc/>
    public IReadOnlyList<Problem> Remarks => _remarks;

    /// <inheritdoc/>
    public IReadOnlyList<MappedReject> Rejects => _rejects;

    /// <inheritdoc/>
    public LineCounts Counts { get; private set; } = LineCounts.None;

    /// <summary>Headings of the file.</summary>
    public HeadingRow Columns => _document.Columns;

    /// <summary>Opens a file; the stream is closed with the reader, or at once when there is none.</summary>
    public static Outcome<TextRecordings> Open(Stream stream, RecordingRequest request) =>
        RecordReaders.Open(stream, request.File, request.Mapping).Succeeded(out var document, out var problems)
            ? new TextRecordings(document, request)
            : Outcome<TextRecordings>.Failed(problems);

    /// <inheritdoc/>
    public bool Fits()
    {
        var columns = new SampleColumns(_request.Mapping, _shape);
        if (_request.Mapping.Recording!.Form == RecordingForm.Wide)
            columns.ByTrial();
        else
            columns.All();
        return columns.Problems.Count == 0;
    }

    /// <inheritdoc/>
    public IEnumerable<Recording> Read()
    {
        var columns = new SampleColumns(_request.Mapping, _shape);
        var facts = new RecordingFacts(_request, _document.Decimal, _document.Preamble);
        var finish = new RunFinish(_request, facts, _fixed, _remarks);
        var division = Division(columns, facts.RateHz(_fixed));
        var missing = new MissingTokens(_request.Mapping.Missing, []);
        var notData = new RowClassifier(_request.Mapping.NotData, heading => columns.Position(heading, "a row rule"), missing);
        columns.NoteUnmapped();
        _problems.AddRange(columns.Problems);
        _remarks.AddRange(columns.Remarks);
        if (_problems.Count > 0)
            yield break;
        foreach (var block in _document.Blocks())
        {
            using (block)
            {
                TakeBroken(block, notData);
                foreach (var (from, upTo) in Stretches(block, notData))
                {
                    _samples += upTo - from;
                    foreach (var run in division.Take(block, from, upTo))
                    {
                        if (Finished(division, finish, run) is { } recording)
                            yield return recording;
                        if (_problems.Count > 0)
                            yield break;
                    }

                    if (division.Problem is { } problem)
                    {
                        _problems.Add(problem);
                        yield break;
                    }
                }
            }
        }

        foreach (var run in division.End())
        {
            if (Finished(division, finish, run) is { } recording)
                yield return recording;
            if (_problems.Count > 0)
                yield break;
        }

        if (division.Problem is { } last)
            _problems.Add(last);
        Balance(division.IsShared ? _samples - _taken : division.Unused);
    }

    /// <inheritdoc/>
    public void Dispose() => _document.Dispose();

    private IRunDivision Division(SampleColumns columns, double rateHz)
    {
        var rule = _request.Mapping.Recording!;
        var heads = new RunHeads(_request.Mapping, _fixed, columns);
        var clock = rule.Clock is null ? null : columns.Clock(rule, rateHz);
        return rule.Form switch
        {
            RecordingForm.Wide => new WideDivision(_request.File, columns.ByTrial(), clock, heads, _rejects),
            RecordingForm.Stream => new StreamDivision(_request.File, rule.Cut!, columns.All(), clock, rateHz, heads, columns, _rejects),
            _ => new TrialDivision(_request.File, rule.Trial?.Column is { } trial ? columns.Position(trial, "the number of a recording") : -1, columns.All(), clock, heads, _rejects),
        };
    }

    /// <summary>Neighbouring rows of data, as many as are read at a time; rows that are none are counted.</summary>
    private IEnumerable<(int From, int UpTo)> Stretches(RawBlock block, RowClassifier notData)
    {
        var from = 0;
        for (var row = 0; row < block.RowCount; row++)
        {
            var label = notData.Label(block, row);
            if (row > from && (label is not null || row - from == SampleRows.Most))
            {
                yield return (from, row);
                from = row;
            }

            if (label is not null)
            {
                CountNotData(label, 1);
                from = row + 1;
            }
        }

        if (from < block.RowCount)
            yield return (from, block.RowCount);
    }

    private Recording? Finished(IRunDivision division, RunFinish finish, SampleRun run)
    {
        if (!finish.Of(run).Succeeded(out var recording, out var problems))
        {
            _problems.AddRange(problems);
            return null;
        }

        _taken += division.IsShared ? Math.Max(0, recording.Lines - _taken) : recording.Lines;
        var (first, last) = (run.Lines[0], run.Lines[^1]);
        for (var i = _rejects.Count - 1; i >= 0 && _rejects[i].Line >= first; i--)
        {
            if (!_rejects[i].IsRow && _rejects[i].Line <= last)
                _rejects[i] = _rejects[i] with { RowLine = run.Row };
        }

        run.Release();
        return recording;
    }

    private void TakeBroken(RawBlock block, RowClassifier notData)
    {
        foreach (var record in block.Rejected)
        {
            if (notData.Label(record.Cells) is { } label)
            {
                CountNotData(label, 1);
                continue;
            }

            _rejects.Add(new MappedReject(record.Line, record.Raw, record.Problem.Code, record.Problem.Expected, true, null, null));
            _rejected++;
        }
    }

    private void Balance(long unused)
    {
        var records = _document.Counts;
        CountNotData("preamble", records.Preamble);
        CountNotData("heading", records.Headings + records.Repeated);
        CountNotData("units", records.Units);
        CountNotData("blank", records.Blank);
        CountNotData("between recordings", unused);
        Counts = new LineCounts(records.Records, _taken, _rejected, _notData);
    }

    private void CountNotData(string label, long rows)
    {
        if (rows > 0)
            _notData[label] = _notData.GetValueOrDefault(label) + rows;
    }
}
