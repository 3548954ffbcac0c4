namespace SwingStudy.Ingestion.Intake;

/// <summary>What one run took in.</summary>
/// <param name="Files">Each file, in the order in which it was taken.</param>
public sealed record IntakeReport(IReadOnlyList<FileResult> Files)
{
    /// <summary>Whether a person is needed: a file is held or could not be read.</summary>
    public bool NeedsPerson => Files.Any(file => file.Outcome is FileOutcome.Held or FileOutcome.NotRead or FileOutcome.Refused);

    /// <summary>Whether a file is held or refused by a rule about people, such as a consent that is missing.</summary>
    public bool IsForbidden => Files.Any(file => file.IsForbidden);

    /// <summary>Lines read of the files taken.</summary>
    public long LinesRead => Files.Where(file => file.Outcome == FileOutcome.Taken).Sum(file => file.Counts.Read);

    /// <summary>Rows taken.</summary>
    public long RowsTaken => Files.Where(file => file.Outcome == FileOutcome.Taken).Sum(file => file.Counts.Taken);

    /// <summary>Rows rejected.</summary>
    public long RowsRejected => Files.Where(file => file.Outcome == FileOutcome.Taken).Sum(file => file.Counts.Rejected);

    /// <summary>Lines that are not data.</summary>
    public long LinesNotData => Files.Where(file => file.Outcome == FileOutcome.Taken).Sum(file => file.Counts.NotDataTotal);
}
