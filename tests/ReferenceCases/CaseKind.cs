namespace SwingStudy.Tests.Reference;

/// <summary>One kind of reference case: how it is recognised from its inputs and expected names, and how its values are computed.</summary>
/// <param name="Name">For messages.</param>
/// <param name="Matches">Whether a case is of this kind. Looks at shape, not at the id: other data of the same kind carry other ids.</param>
/// <param name="Compute">All values by expected name: numbers, truth values, texts, null, arrays or dictionaries of them.</param>
public sealed record CaseKind(string Name, Func<ReferenceCase, bool> Matches, Func<ReferenceCase, IReadOnlyDictionary<string, object?>> Compute);
