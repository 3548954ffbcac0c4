using NodaTime;

namespace SwingStudy.Storage.Registry;

/// <summary>What is left of an erased person: that somebody was erased, when, and what can no longer be reproduced. No pseudonym.</summary>
/// <param name="Id">Random identifier.</param>
/// <param name="StartedAt">When it began.</param>
/// <param name="FinishedAt">When it was done; null while it is unfinished.</param>
/// <param name="Document">JSON object: counts, originals, releases.</param>
public sealed record Erasure(string Id, Instant StartedAt, Instant? FinishedAt, string Document);
