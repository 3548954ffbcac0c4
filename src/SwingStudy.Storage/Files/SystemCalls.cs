using System.Runtime.InteropServices;

namespace SwingStudy.Storage.Files;

/// <summary>The three calls of the operating system that .NET does not offer: a link that must be new, and flushing a folder.</summary>
internal static partial class SystemCalls
{
    /// <summary>The name is taken already.</summary>
    internal const int NameExists = 17;

    private const int ReadOnly = 0;

    /// <summary>Gives a file a second name; fails when the name exists. 0, or the number of the error.</summary>
    internal static int Link(string existing, string name) => LinkCall(existing, name) == 0 ? 0 : Marshal.GetLastPInvokeError();

    /// <summary>Makes the names in a folder survive a power cut. 0, or the number of the error.</summary>
    internal static int SyncFolder(string folder)
    {
        var handle = OpenCall(folder, ReadOnly);
        if (handle < 0)
            return Marshal.GetLastPInvokeError();
        var error = SyncCall(handle) == 0 ? 0 : Marshal.GetLastPInvokeError();
        _ = CloseCall(handle);
        return error;
    }

    [LibraryImport("libc", EntryPoint = "link", SetLastError = true, StringMarshalling = StringMarshalling.Utf8)]
    private static partial int LinkCall(string existing, string name);

    [LibraryImport("libc", EntryPoint = "open", SetLastError = true, StringMarshalling = StringMarshalling.Utf8)]
    private static partial int OpenCall(string path, int flags);

    [LibraryImport("libc", EntryPoint = "fsync", SetLastError = true)]
    private static partial int SyncCall(int handle);

    [LibraryImport("libc", EntryPoint = "close", SetLastError = true)]
    private static partial int CloseCall(int handle);
}
