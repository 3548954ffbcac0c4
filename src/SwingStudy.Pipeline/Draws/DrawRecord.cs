using NodaTime;

namespace SwingStudy.Pipeline.Draws;

/// <summary>Under which number a draw goes on record, for which version of the protocol, when and by whom.</summary>
/// <param name="Number">Number of the draw.</param>
/// <param name="ProtocolVersion">Number of the protocol version.</param>
/// <param name="At">When.</param>
/// <param name="Actor">Who.</param>
public sealed record DrawRecord(int Number, int ProtocolVersion, Instant At, string Actor);
