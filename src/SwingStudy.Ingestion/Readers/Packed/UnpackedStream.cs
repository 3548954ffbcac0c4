namespace SwingStudy.Ingestion.Readers.Packed;

/// <summary>What was in a packed file, in a temporary file that nobody else can open and that goes with the stream; the packed one is closed with it.</summary>
/// <param name="path">A name that nobody uses.</param>
/// <param name="packed">The packed bytes.</param>
internal sealed class UnpackedStream(string path, Stream packed) : FileStream(path, Options)
{
    private static FileStreamOptions Options
    {
        get
        {
            var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.ReadWrite, Share = FileShare.None, BufferSize = 0, Options = FileOptions.DeleteOnClose };
            if (!OperatingSystem.IsWindows())
                options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
            return options;
        }
    }

    private bool _keepsPacked;

    /// <summary>Removes the temporary file and leaves the packed stream open.</summary>
    public void DisposeAlone()
    {
        _keepsPacked = true;
        Dispose();
    }

    protected override void Dispose(bool disposing)
    {
        base.Dispose(disposing);
        if (disposing && !_keepsPacked)
            packed.Dispose();
    }
}
