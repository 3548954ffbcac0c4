using SwingStudy.Domain.Problems;

namespace SwingStudy.Domain.Protocols;

/// <summary>What a look at a whole protocol found.</summary>
/// <param name="Problems">Contradictions: the protocol cannot be used.</param>
/// <param name="Warnings">Weaknesses: the protocol can be used, and the study will answer less than it seems to.</param>
public sealed record ProtocolReview(IReadOnlyList<Problem> Problems, IReadOnlyList<Problem> Warnings);
