using System.Buffers.Binary;
using System.IO.Compression;
using SwingStudy.Domain.Problems;

namespace SwingStudy.Ingestion.Readers.Packed;

/// <summary>Exports that arrive packed: one file in gzip (RFC 1952), or alone in a zip. They are known by their bytes, so that no mapping says so.</summary>
/// <remarks>
/// A zip with the parts of a workbook or another package is no packed export. What comes out is bounded (<see cref="ReaderLimits.UnpackedBytes"/>,
/// <see cref="ReaderLimits.UnpackedRatio"/>): sizes that a file declares may be lies, so bytes are counted.
/// </remarks>
internal static class PackedFile
{
    private const int MegaByte = 1 << 20;
    private static readonly string[] PackageParts = ["[Content_Types].xml", "mimetype"];

    private static ReadOnlySpan<byte> Gzip => [0x1F, 0x8B];

    private static ReadOnlySpan<byte> Zip => [(byte)'P', (byte)'K', 3, 4];

    private static ReadOnlySpan<byte> EmptyZip => [(byte)'P', (byte)'K', 5, 6];

    /// <summary>The bytes inside, or the stream itself where it is not packed.</summary>
    /// <param name="stream">Can be set back; closed with what is returned, and left open where there are problems.</param>
    /// <param name="file">Name in messages.</param>
    /// <returns>A stream at its start; or the problem <c>file-compressed</c> or <c>file-unpacks-wrong</c>.</returns>
    public static Outcome<Stream> Open(Stream stream, string file)
    {
        var start = new byte[Zip.Length];
        stream.Position = 0;
        var count = stream.ReadAtLeast(start, start.Length, throwOnEndOfStream: false);
        stream.Position = 0;
        var bytes = start.AsSpan(0, count);
        var isZip = bytes.SequenceEqual(Zip) || bytes.SequenceEqual(EmptyZip);
        if (!isZip && !bytes.StartsWith(Gzip))
            return Outcome<Stream>.Of(stream);
        UnpackedStream? unpacked = null;
        try
        {
            unpacked = new UnpackedStream(Path.Combine(Path.GetTempPath(), $".swingstudy-{Guid.NewGuid():N}"), stream);
            var problem = isZip ? FromZip(stream, unpacked, file, out var isPackage) : FromGzip(stream, unpacked, file, out isPackage);
            if (isPackage || problem is not null)
            {
                // The temporary file goes; the packed stream stays with the caller.
                unpacked.DisposeAlone();
                stream.Position = 0;
                return problem is null ? Outcome<Stream>.Of(stream) : problem;
            }

            unpacked.Position = 0;
            return Outcome<Stream>.Of(unpacked);
        }
        catch (InvalidDataException damaged)
        {
            unpacked?.DisposeAlone();
            stream.Position = 0;
            return ReaderMessages.UnpacksWrong(file, damaged.Message);
        }
    }

    /// <summary>What is in packed bytes; the bytes themselves where they are not packed or cannot be unpacked.</summary>
    public static byte[] Unpack(byte[] content)
    {
        // The stream over the bytes needs no closing where it comes back itself.
        if (!Open(new MemoryStream(content, writable: false), "").Succeeded(out var stream) || stream is not UnpackedStream)
            return content;
        using (stream)
        {
            var unpacked = new byte[stream.Length];
            stream.ReadExactly(unpacked);
            return unpacked;
        }
    }

    private static Problem? FromGzip(Stream packed, Stream to, string file, out bool isPackage)
    {
        isPackage = false;
        using var gzip = new GZipStream(packed, CompressionMode.Decompress, leaveOpen: true);
        if (!TryCopy(gzip, to, packed.Length, out var size))
            return ReaderMessages.UnpacksTooLarge(file);

        // The last four bytes are the size of the last part, of which there is nearly always one: a file cut short has others there.
        var trailer = new byte[sizeof(uint)];
        packed.Position = Math.Max(0, packed.Length - trailer.Length);
        packed.ReadExactly(trailer);
        return BinaryPrimitives.ReadUInt32LittleEndian(trailer) <= size ? null : ReaderMessages.UnpacksWrong(file, "its end is missing");
    }

    private static Problem? FromZip(Stream packed, Stream to, string file, out bool isPackage)
    {
        using var zip = new ZipArchive(packed, ZipArchiveMode.Read, leaveOpen: true);
        isPackage = zip.Entries.Any(entry => PackageParts.Contains(entry.FullName));
        if (isPackage)
            return null;
        var files = zip.Entries.Where(entry => !entry.FullName.EndsWith('/') && !entry.FullName.StartsWith("__MACOSX/", StringComparison.Ordinal)).ToList();
        if (files is not [var only])
            return ReaderMessages.SeveralPacked(file, files.Count);
        using var inside = only.Open();
        return TryCopy(inside, to, only.CompressedLength, out _) ? null : ReaderMessages.UnpacksTooLarge(file);
    }

    private static bool TryCopy(Stream from, Stream to, long packedSize, out long size)
    {
        var buffer = new byte[MegaByte];
        size = 0;
        while (from.Read(buffer) is var count and > 0)
        {
            size += count;
            if (size > ReaderLimits.UnpackedBytes || (size > ReaderLimits.UnpackedFree && size > packedSize * ReaderLimits.UnpackedRatio))
                return false;
            to.Write(buffer, 0, count);
        }

        return true;
    }
}
