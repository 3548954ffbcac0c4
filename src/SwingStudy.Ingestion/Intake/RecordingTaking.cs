using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Sources;
using SwingStudy.Ingestion.Recordings;

namespace SwingStudy.Ingestion.Intake;

/// <summary>Reads one file of recordings, compares it with what the study has, and writes what is new.</summary>
internal sealed class RecordingTaking(IntakeContext study, IntakeTables tables, EarlierCaptures earlier, EarlierCurves curves, PeopleByAlias people, IndexTables indexes)
{
    /// <summary>The recordings of a file; or all that holds it, and then nothing stays written.</summary>
    public Outcome<TakenRecordings> Take(Candidate candidate, string path, ChosenMapping chosen, Sha256 hash, Mapping.Times.AmbiguousChoice? times, Action<double> progress)
    {
        var mapping = chosen.Mapping;
        var index = indexes.RowOf(candidate, mapping, out var missing);
        if (missing is not null)
            return missing;
        var request = new RecordingRequest
        {
            Mapping = mapping,
            File = candidate.Name,
            Name = MappingChoice.NameWithin(candidate, mapping),
            NameMatch = chosen.NameMatch,
            Index = index,
            Times = times,
            IsRightHanded = alias => people.Find(alias) is { } player ? study.Registry.Facts(player).IsRightHanded : null,
        };
        if (!RecordingReaders.Open(path, request).Succeeded(out var reader, out var problems))
            return Outcome<TakenRecordings>.Failed(problems);
        using (reader)
        using (var files = new RecordingFiles(tables, mapping, hash, study.Identities.AliasHash))
        {
            var taken = new TakenRecordings();
            foreach (var recording in reader.Read())
            {
                Add(candidate, mapping, recording, files, taken);
                progress(0.5);
            }

            problems = [.. reader.Problems, .. taken.Problems];
            if (problems.Count > 0)
                return Outcome<TakenRecordings>.Failed(problems);
            if (taken.Stored + taken.Repeats == 0)
                return RecordingMessages.NoSamples(candidate.Name);
            return taken.With(files.Complete(), reader);
        }
    }

    private void Add(Candidate candidate, SourceMapping mapping, Recording recording, RecordingFiles files, TakenRecordings taken)
    {
        var participant = default(ParticipantId);
        if (recording.Alias is { } alias)
        {
            if (!taken.People.TryGetValue(alias, out participant))
            {
                if (!people.Resolve(alias, mapping, candidate.Name, recording.Row).Succeeded(out var resolved, out var unknown))
                {
                    if (taken.UnknownNames.Add(alias))
                        taken.Problems.AddRange(unknown);
                    return;
                }

                taken.People[alias] = participant = resolved;
            }
        }

        var key = new CaptureKey(recording.StartMillis, recording.Sequence ?? long.MinValue, 0);
        if (taken.Rows.TryGetValue((participant, key), out var twin))
        {
            taken.Problems.Add(IntakeMessages.RowsConflict(candidate.Name, recording.Row, twin));
            return;
        }

        taken.Rows[(participant, key)] = recording.Row;
        var known = earlier.Find(participant, mapping.Source, ["struck_at", "purpose"], key.RecordedAt, key.RecordedAt).GetValueOrDefault(key);
        if (known is not null && IsSame(recording, known))
        {
            taken.Repeats++;
            taken.RepeatedLines += recording.Lines;
            return;
        }

        if (known is not null)
            taken.Revisions.Add(new RowRevision(recording.Row, known.Id, "curves", null, null));
        taken.Stored++;
        files.Add(recording, participant, known?.Id);
    }

    private bool IsSame(Recording recording, EarlierCapture known)
    {
        var struck = known.Rows.Instants("struck_at")[known.Row];
        var now = RecordingFiles.StruckAt(recording)?.ToUnixTimeMilliseconds() ?? Domain.Tables.InstantColumn.MissingMillis;
        return struck == now && known.Rows.Texts("purpose")[known.Row] == Word.Of(recording.Purpose) && curves.AreSame(known, recording);
    }
}
