namespace SwingStudy.Domain.Sources;

/// <summary>Where a continuous recording is cut: around each moment at which a column rises to a level.</summary>
/// <param name="Column">Heading of the column.</param>
/// <param name="Level">The level, in the file's own numbers; the next trigger needs values below it first.</param>
/// <param name="FromSeconds">Start of a recording relative to its trigger, not after it.</param>
/// <param name="ToSeconds">End of a recording relative to its trigger, after it; a trigger before that end starts no recording of its own.</param>
public sealed record StreamCut(string Column, double Level, double FromSeconds, double ToSeconds);
