using System.Text.Json;
using NodaTime;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Sources;
using SwingStudy.Ingestion.Mapping;
using SwingStudy.Ingestion.Readers;
using SwingStudy.Ingestion.Recordings;
using SwingStudy.Storage.Originals;
using SwingStudy.Storage.Registry;

namespace SwingStudy.Ingestion.Intake;

/// <summary>Takes one file after the other, in one run.</summary>
internal sealed class FileTaking
{
    private readonly IntakeContext _study;
    private readonly OriginalStore _originals;
    private readonly StoredAhead _arrivals;
    private readonly MappingChoice _choice;
    private readonly EarlierCaptures _earlier;
    private readonly IntakeBatch _batch;
    private readonly CaptureFiles _files;
    private readonly UnitJumps _jumps;
    private readonly PeopleByAlias _people;
    private readonly IndexTables _indexes;
    private readonly RecordingTaking _recordings;
    private readonly IntakeDecisions _decisions;
    private readonly HashSet<Sha256> _erased;
    private readonly Dictionary<Sha256, FileOutcome> _ofThisRun = [];

    public FileTaking(IntakeContext study, OriginalStore originals, StoredAhead arrivals, IntakeTables tables, MappingChoice choice, IntakeBatch batch)
    {
        _study = study;
        _originals = originals;
        _arrivals = arrivals;
        _choice = choice;
        _earlier = new EarlierCaptures(batch.Captures);
        _batch = batch;
        _files = new CaptureFiles(study, tables);
        _jumps = new UnitJumps(_earlier);
        _people = new PeopleByAlias(study);
        _decisions = new IntakeDecisions(study.Registry);
        _indexes = new IndexTables(study.Registry, originals);
        _recordings = new RecordingTaking(study, tables, _earlier, new EarlierCurves(batch.Curves, batch.Events), _people, _indexes);
        _erased = [.. study.Registry.ErasedOriginals().Select(erased => erased.Hash)];
    }

    /// <summary>Takes, holds or recognises a file; null for a held file whose bytes came again and were dealt with in this run.</summary>
    public FileResult? Take(Candidate candidate, Action<double> progress)
    {
        Sha256 hash;
        if (candidate.Held is { } held)
        {
            if (!_originals.Reach(Stored(held)).Succeeded(out _, out var gone))
                return new FileResult { File = candidate.Name, Outcome = FileOutcome.NotRead, Hash = held, Problems = gone };
            hash = held;
            if (_ofThisRun.ContainsKey(hash))
                return null;
        }
        else
        {
            if (!_arrivals.Take(candidate).Succeeded(out var original, out var problems))
                return new FileResult { File = candidate.Name, Outcome = FileOutcome.NotRead, Problems = problems };
            hash = original.Hash;
            if (_erased.Contains(hash))
                return Refuse(candidate, hash, null, [IntakeMessages.BytesErased(candidate.Name)]);
            if (_choice.IndexOf(candidate) is not null)
                _indexes.Remember(candidate.Name, hash);
            if (Known(candidate, hash) is { } known)
                return known;
        }

        var result = _decisions.LeavesOut(hash) ? LeaveOut(candidate, hash) : Read(candidate, hash, progress);
        if (result.Outcome != FileOutcome.Refused)
            _ofThisRun[hash] = result.Outcome;
        return result;
    }

    /// <summary>The same bytes again change nothing. A file that an interrupted run had recorded already only has to leave the inbox.</summary>
    private FileResult? Known(Candidate candidate, Sha256 hash)
    {
        var record = _study.Registry.IntakeFile(hash);
        var isPending = _ofThisRun.ContainsKey(hash);
        if (!isPending && (record is null || (record.Status == IntakeStatus.Held && record.InboxPath == candidate.Name)))
            return null;
        var isLeftover = record is not null && record.InboxPath == candidate.Name
            && File.GetLastWriteTimeUtc(candidate.Path) <= record.At.ToDateTimeUtc();
        if (record is not null && !isLeftover)
            _study.Registry.Act(_study.Actor, "intake.duplicate", act =>
            {
                act.AddDuplicate(hash, candidate.Name, Now());
                return LedgerDetails.Duplicate(hash.ToString());
            });
        if (record is null)
            _batch.RemoveAfterCommit(candidate, hash);
        else if (candidate.Place == CandidatePlace.Inbox)
            File.Delete(candidate.Path);
        return new FileResult { File = candidate.Name, Outcome = FileOutcome.Duplicate, Hash = hash, Source = record?.Source };
    }

    private FileResult Read(Candidate candidate, Sha256 hash, Action<double> progress)
    {
        if (!_originals.Reach(Stored(hash)).Succeeded(out var path, out var problems))
            return new FileResult { File = candidate.Name, Outcome = FileOutcome.NotRead, Hash = hash, Problems = problems };
        if (_choice.IndexOf(candidate) is { } owner)
            return TakeIndex(candidate, hash, path, owner);
        if (!_choice.For(candidate, path).Succeeded(out var chosen, out problems))
            return Hold(candidate, hash, null, problems);
        var mapping = chosen.Mapping;
        if (mapping.Rows == RowMeaning.Recordings)
            return TakeRecordings(candidate, hash, path, chosen, progress);
        var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read, 0, FileOptions.SequentialScan);
        if (!RecordReaders.Open(stream, candidate.Name, mapping).Succeeded(out var document, out problems))
            return Hold(candidate, hash, mapping, problems);
        using (document)
        {
            var mapped = new FileMapper(mapping, _study.Dictionary, _study.Threads).Map(
                document, chosen.NameMatch, _decisions.TimesOf(hash), () => progress((double)stream.Position / Math.Max(1, stream.Length)));
            if (!mapped.Succeeded(out var file, out problems) || !_people.Resolve(file, candidate.Name).Succeeded(out var people, out problems)
                || !_people.WithHands(file, people, candidate.Name).Succeeded(out file, out problems))
                return Hold(candidate, hash, mapping, problems);
            var mask = _people.Mask([.. file.Aliases.Select((alias, i) => (alias, people[i].ToString()))]);
            var arrival = new Arrival(candidate, hash, document, file, people, mask);
            return mapping.Rows == RowMeaning.Sessions ? TakeSessions(arrival) : TakeCaptures(arrival);
        }
    }

    private FileResult TakeCaptures(Arrival arrival)
    {
        var file = arrival.File;
        var takeAnyway = _decisions.Takes(arrival.Hash);
        var rowsOf = RowsOf(arrival);
        var check = new OverlapCheck(file, arrival.Candidate.Name, _earlier, takeAnyway);
        var players = rowsOf.Select(player => (Participant: player.Key, Overlap: check.Check(player.Key, player.Value))).ToList();
        var problems = players.SelectMany(player => player.Overlap.Problems).ToList();
        var remarks = new List<Problem>(file.Remarks);
        var shape = SheetShape.Of(arrival.Document, null) with { File = arrival.Candidate.Name };
        foreach (var (participant, overlap) in players)
        {
            var (jumps, hints) = _jumps.Check(file, shape, participant, overlap.New);
            (takeAnyway ? remarks : problems).AddRange(jumps);
            remarks.AddRange(hints);
        }

        if (problems.Count > 0)
            return Hold(arrival.Candidate, arrival.Hash, file.Plan.Mapping, problems);
        if (players.Sum(player => player.Overlap.Lacking) is var lacking and > 0)
            remarks.Add(IntakeMessages.RevisionLacks(arrival.Candidate.Name, lacking));
        var captures = _files.Write(file, arrival.Hash, players);
        foreach (var player in players)
            _jumps.Forget(player.Participant, file.Plan.Mapping.Source);
        var repeats = players.SelectMany(player => player.Overlap.Repeats).Sum(row => file.LinesPerRow?[row] ?? 1L);
        return Finish(arrival, captures, [], repeats, [.. players.SelectMany(player => player.Overlap.Revisions).OrderBy(revision => revision.Row)], remarks);
    }

    private FileResult TakeSessions(Arrival arrival)
    {
        var zone = DateTimeZoneProviders.Tzdb[_study.Zone];
        return new SessionRows(_study.Registry, zone).Read(arrival.File, arrival.People, arrival.Hash, arrival.Candidate.Name).Succeeded(out var changes, out var problems)
            ? Finish(arrival, TableRows.None, changes.Sessions, changes.Repeats, changes.Revisions, arrival.File.Remarks)
            : Hold(arrival.Candidate, arrival.Hash, arrival.File.Plan.Mapping, problems);
    }

    private FileResult Finish(
        Arrival arrival,
        TableRows captures,
        IReadOnlyList<SessionRecord> sessions,
        long repeats,
        IReadOnlyList<RowRevision> revisions,
        IReadOnlyList<Problem> remarks)
    {
        var (file, document) = (arrival.File, arrival.Document);
        var mapping = file.Plan.Mapping;
        var result = new FileResult
        {
            File = arrival.Candidate.Name,
            Outcome = FileOutcome.Taken,
            Hash = arrival.Hash,
            Source = mapping.Source,
            Counts = file.Counts.Moved(repeats, "repeat"),
            RejectedCells = file.Rejects.Count(reject => !reject.IsRow),
            Revisions = revisions,
            Remarks = remarks,
        };
        var record = Record(arrival.Candidate, result, mapping, document.Preamble, arrival.Mask) with
        {
            Encoding = document.Encoding,
            Delimiter = document.Delimiter?.ToString(),
            DecimalMark = document.Decimal.ToString(),
        };
        var rejects = _files.WriteRejects(file.Rejects, mapping.Rows != RowMeaning.Sessions, arrival.Hash, arrival.Mask);
        _batch.Add(new PendingFile(arrival.Candidate, record, rejects, sessions, result) { Data = RecordingData.None with { Captures = captures } });
        return result;
    }

    private FileResult TakeRecordings(Candidate candidate, Sha256 hash, string path, ChosenMapping chosen, Action<double> progress)
    {
        var mapping = chosen.Mapping;
        if (!_recordings.Take(candidate, path, chosen, hash, _decisions.TimesOf(hash), progress).Succeeded(out var taken, out var problems))
            return Hold(candidate, hash, mapping, problems);
        var mask = _people.Mask(taken.People.Select(person => (person.Key, person.Value.ToString())));
        var result = new FileResult
        {
            File = candidate.Name,
            Outcome = FileOutcome.Taken,
            Hash = hash,
            Source = mapping.Source,
            Counts = taken.Counts,
            RejectedCells = taken.Rejects.Count(reject => !reject.IsRow),
            Recordings = taken.Stored,
            Revisions = taken.Revisions,
            Remarks = taken.Remarks,
        };
        var record = Record(candidate, result, mapping, taken.Preamble, mask) with
        {
            Encoding = taken.Text.Encoding,
            Delimiter = taken.Text.Delimiter?.ToString(),
            DecimalMark = taken.Text.Decimal?.ToString(),
        };
        var rejects = _files.WriteRejects(taken.Rejects, true, hash, mask);
        _batch.Add(new PendingFile(candidate, record, rejects, [], result) { Data = taken.Data });
        return result;
    }

    /// <summary>A table beside recordings: its bytes are kept for the files that it lists, and its rows are no data by themselves.</summary>
    private FileResult TakeIndex(Candidate candidate, Sha256 hash, string path, SourceMapping mapping)
    {
        if (!IndexFile.Read(File.OpenRead(path), candidate.Name, mapping, mapping.Index!).Succeeded(out var index, out var problems))
            return Hold(candidate, hash, mapping, problems);
        var result = new FileResult
        {
            File = candidate.Name,
            Outcome = FileOutcome.Taken,
            Hash = hash,
            Source = mapping.Source,
            Counts = new LineCounts(index.Records, 0, 0, new Dictionary<string, long> { ["index"] = index.Records }),
        };
        _batch.Add(new PendingFile(candidate, Record(candidate, result, mapping, [], new NameMask([])), TableRows.None, [], result));
        return result;
    }

    private IntakeFile Record(Candidate candidate, FileResult result, SourceMapping mapping, IReadOnlyList<PreambleLine> preamble, NameMask mask)
    {
        var counts = result.Counts;
        if (!counts.Balances)
            throw new InvalidOperationException($"{candidate.Name}: {counts.Read} lines are not {counts.Taken} + {counts.Rejected} + {counts.NotDataTotal}.");
        return new IntakeFile
        {
            Hash = result.Hash!.Value,
            Source = mapping.Source,
            InboxPath = candidate.Name,
            Size = candidate.Size,
            Status = IntakeStatus.Taken,
            LinesRead = counts.Read,
            RowsTaken = counts.Taken,
            RowsRejected = counts.Rejected,
            LinesNotData = counts.NotDataTotal,
            MappingHash = mapping.Hash,
            Preamble = preamble.Count == 0 ? null : JsonSerializer.Serialize(preamble.Select(line => mask.Of(line.Text))),
            Details = LedgerDetails.Registry(result, mask),
            At = Now(),
        };
    }

    private static SortedDictionary<ParticipantId, List<int>> RowsOf(Arrival arrival)
    {
        var rows = new SortedDictionary<ParticipantId, List<int>>(Comparer<ParticipantId>.Create((a, b) => string.CompareOrdinal(a.ToString(), b.ToString())));
        var byAlias = arrival.People.Select(person => rows.TryGetValue(person, out var list) ? list : rows[person] = []).ToArray();
        for (var row = 0; row < arrival.File.Count; row++)
            byAlias[arrival.File.AliasOf[row]].Add(row);
        return rows;
    }

    /// <summary>Nothing of an erased person comes back, not even as bytes that are held: the copy goes, the file lies where it lay.</summary>
    private FileResult Refuse(Candidate candidate, Sha256 hash, SourceMapping? mapping, IReadOnlyList<Problem> problems)
    {
        if (_study.Registry.IntakeFile(hash) is null || _erased.Contains(hash))
            _originals.Remove(hash);
        return new FileResult { File = candidate.Name, Outcome = FileOutcome.Refused, Hash = hash, Source = mapping?.Source, Problems = problems };
    }

    private Sha256 Stored(Sha256 hash) => _study.Registry.StoredHash(hash) ?? hash;

    private FileResult Hold(Candidate candidate, Sha256 hash, SourceMapping? mapping, IReadOnlyList<Problem> problems)
    {
        if (candidate.Place != CandidatePlace.Originals && problems.Any(problem => problem.Code == "person-erased"))
            return Refuse(candidate, hash, mapping, problems);
        var mask = _people.Mask([]);
        var earlier = _study.Registry.IntakeFile(hash);
        var record = new IntakeFile
        {
            Hash = hash,
            Source = mapping?.Source,
            InboxPath = candidate.Name,
            Size = candidate.Size,
            Status = IntakeStatus.Held,
            MappingHash = mapping?.Hash,
            HoldReasons = [.. problems.Select(problem => LedgerDetails.Stored(problem, mask))],
            At = Now(),
        };
        if (earlier is null || !earlier.HoldReasons.SequenceEqual(record.HoldReasons))
        {
            _study.Registry.Act(_study.Actor, "intake.held", act =>
            {
                act.Save(record);
                return LedgerDetails.Held(record);
            });
        }

        if (candidate.Place == CandidatePlace.Inbox)
            File.Delete(candidate.Path);
        return new FileResult { File = candidate.Name, Outcome = FileOutcome.Held, Hash = hash, Source = mapping?.Source, Problems = problems };
    }

    private FileResult LeaveOut(Candidate candidate, Sha256 hash)
    {
        var record = new IntakeFile { Hash = hash, InboxPath = candidate.Name, Size = candidate.Size, Status = IntakeStatus.Rejected, At = Now() };
        _study.Registry.Act(_study.Actor, "intake.left-out", act =>
        {
            act.Save(record);
            return LedgerDetails.LeftOut(record);
        });
        if (candidate.Place == CandidatePlace.Inbox)
            File.Delete(candidate.Path);
        return new FileResult { File = candidate.Name, Outcome = FileOutcome.LeftOut, Hash = hash };
    }

    private Instant Now() => Instant.FromDateTimeOffset(_study.Time.GetUtcNow());

    private sealed record Arrival(Candidate Candidate, Sha256 Hash, RecordDocument Document, MappedFile File, IReadOnlyList<ParticipantId> People, NameMask Mask);
}
