using SwingStudy.Domain.Problems;

namespace SwingStudy.Ingestion.Readers;

/// <summary>A record that could not be divided into the cells of the headings. It is never lost: the mapping may still know it as a footer.</summary>
/// <param name="Line">Line (text) or row (workbook, array) on which it starts, from 1.</param>
/// <param name="Raw">Its text as it stands in the file; cut at <see cref="ReaderLimits.RawCharacters"/>, with "…" at the end, when longer.</param>
/// <param name="Cells">The cells that could be told apart; empty when none could.</param>
/// <param name="Problem">What is wrong with it.</param>
public sealed record RejectedRecord(int Line, string Raw, IReadOnlyList<string> Cells, Problem Problem);
