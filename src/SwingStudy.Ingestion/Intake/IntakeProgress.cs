namespace SwingStudy.Ingestion.Intake;

/// <summary>How far an intake is.</summary>
/// <param name="File">The file that is being read.</param>
/// <param name="BytesDone">Bytes of all files up to here.</param>
/// <param name="BytesTotal">Bytes of all files of this run.</param>
/// <param name="FilesDone">Files that are done.</param>
/// <param name="FilesTotal">Files of this run.</param>
public sealed record IntakeProgress(string File, long BytesDone, long BytesTotal, int FilesDone, int FilesTotal);
