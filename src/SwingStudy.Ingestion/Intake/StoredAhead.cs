using SwingStudy.Domain.Problems;
using SwingStudy.Storage.Originals;

namespace SwingStudy.Ingestion.Intake;

/// <summary>
/// Stores the bytes of the next files while the one before is read: hashing and flushing need another core and the device. A file whose bytes were stored and
/// that the run does not come to lies where it lay, as after a run that was cut short.
/// </summary>
/// <param name="originals">Where the bytes go.</param>
/// <param name="arrivals">The files in the order in which they are taken, without those that are stored already or cannot be read yet.</param>
internal sealed class StoredAhead(OriginalStore originals, IReadOnlyList<Candidate> arrivals) : IDisposable
{
    private const int MostAhead = 4;
    private readonly Queue<(Candidate Candidate, Task<Outcome<StoredOriginal>> Stored)> _ahead = [];
    private int _next;

    /// <summary>The stored bytes of the next file in order.</summary>
    /// <exception cref="ArgumentException">It is not the next.</exception>
    public Outcome<StoredOriginal> Take(Candidate candidate)
    {
        for (; _ahead.Count < MostAhead && _next < arrivals.Count; _next++)
        {
            var arrival = arrivals[_next];
            _ahead.Enqueue((arrival, Task.Run(() => Store(arrival))));
        }

        // What is refused stays in the queue, so that whoever closes it waits for it too.
        if (!_ahead.TryPeek(out var first) || first.Candidate != candidate)
            throw new ArgumentException($"{candidate.Name} is not the next file to be stored.", nameof(candidate));
        _ahead.Dequeue();
        var stored = first.Stored.GetAwaiter().GetResult();
        // Equal bytes that came before may have been refused meanwhile, and taken away again.
        return stored.Succeeded(out var original) && !originals.Contains(original.Hash) ? Store(candidate) : stored;
    }

    /// <summary>Waits for those that are being stored.</summary>
    public void Dispose()
    {
        foreach (var (_, stored) in _ahead)
            Task.WhenAny(stored).GetAwaiter().GetResult();
    }

    private Outcome<StoredOriginal> Store(Candidate candidate) =>
        candidate.Place == CandidatePlace.Inbox ? originals.Adopt(candidate.Path) : originals.Take(candidate.Path, keepFile: true);
}
