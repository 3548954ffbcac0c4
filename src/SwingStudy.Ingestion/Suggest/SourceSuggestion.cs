using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Sources;

namespace SwingStudy.Ingestion.Suggest;

/// <summary>A mapping drafted for a file that nobody described. A person checks it before it is used.</summary>
/// <param name="Mapping">The draft.</param>
/// <param name="Yaml">The same as a declaration, each line with its confidence and reason as a comment.</param>
/// <param name="Lines">All lines, the least certain ones first.</param>
/// <param name="Notices">What the reader had to say about the file.</param>
public sealed record SourceSuggestion(SourceMapping Mapping, string Yaml, IReadOnlyList<SuggestedLine> Lines, IReadOnlyList<Problem> Notices);
