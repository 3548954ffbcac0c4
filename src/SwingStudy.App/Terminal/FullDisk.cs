using System.Data.Common;
using SwingStudy.Domain.Studies;

namespace SwingStudy.App.Terminal;

/// <summary>Tells a full disk from other faults.</summary>
internal static class FullDisk
{
    /// <summary>Result code SQLITE_FULL of https://www.sqlite.org/rescode.html, as its driver begins the message.</summary>
    private const string SqliteFull = "SQLite Error 13:";
    private const long HardlyAnything = 1 << 20;

    /// <summary>What systems say when there is no space: ENOSPC and EDQUOT (Linux), ERROR_HANDLE_DISK_FULL and ERROR_DISK_FULL (Windows).</summary>
    private static readonly int[] Codes = [28, 122, unchecked((int)0x80070027), unchecked((int)0x80070070)];

    /// <summary>Whether the fault says so; or is one of writing, without a code of the system, while less than a mebibyte is free.</summary>
    public static bool Explains(Exception fault, StudyFolder folder) => fault.GetBaseException() switch
    {
        DbException refused => refused.Message.StartsWith(SqliteFull, StringComparison.Ordinal) || Free(folder) < HardlyAnything,
        IOException refused => Codes.Contains(refused.HResult) || Free(folder) < HardlyAnything,
        _ => false,
    };

    private static long Free(StudyFolder folder) => Directory.Exists(folder.Root) ? new DriveInfo(folder.Root).AvailableFreeSpace : long.MaxValue;
}
