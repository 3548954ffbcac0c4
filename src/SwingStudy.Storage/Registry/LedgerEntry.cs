using NodaTime;

namespace SwingStudy.Storage.Registry;

/// <summary>One act in the ledger.</summary>
/// <param name="Number">Counted from 1 without gaps.</param>
/// <param name="At">When.</param>
/// <param name="Actor">Who.</param>
/// <param name="Act">What: <c>intake.file</c>, <c>people.add</c>, <c>protocol.lock</c>.</param>
/// <param name="Details">Canonical JSON object; texts that tell of a person stand as keyed hashes, see <see cref="Ledger.Readable"/>.</param>
/// <param name="Previous">Hash of the entry before; 64 zeros for the first.</param>
/// <param name="Hash">SHA-256 of the canonical JSON of all other members.</param>
public sealed record LedgerEntry(long Number, Instant At, string Actor, string Act, string Details, string Previous, string Hash);
