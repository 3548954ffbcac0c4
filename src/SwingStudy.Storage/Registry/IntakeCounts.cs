namespace SwingStudy.Storage.Registry;

/// <summary>Sums over all files: what was read is what was taken, rejected or recognised as not data.</summary>
/// <param name="Taken">Files in the tables.</param>
/// <param name="Held">Files that wait for a person.</param>
/// <param name="Rejected">Files that a person refused.</param>
/// <param name="Duplicates">Times that bytes came again.</param>
/// <param name="LinesRead">Lines of taken files.</param>
/// <param name="RowsTaken">Rows taken.</param>
/// <param name="RowsRejected">Rows rejected.</param>
/// <param name="LinesNotData">Lines that are not data.</param>
public sealed record IntakeCounts(
    long Taken, long Held, long Rejected, long Duplicates, long LinesRead, long RowsTaken, long RowsRejected, long LinesNotData);
