using System.Text.RegularExpressions;
using SwingStudy.Domain.Sources;

namespace SwingStudy.Ingestion.Intake;

/// <summary>A mapping and the match of its pattern on the name of a file.</summary>
internal sealed record ChosenMapping(SourceMapping Mapping, Match? NameMatch);
