namespace SwingStudy.Pipeline.Safety;

/// <summary>A reason to stop a session.</summary>
/// <param name="Evidence">The same evidence is the same stop; worse values are another one.</param>
/// <param name="Rule">The rule and its reason in words.</param>
/// <param name="Detail">What was found.</param>
internal sealed record FoundStop(string Evidence, string Rule, string Detail);
